/** The words of hearing, takes, plan, log and care that are in use. */
import { HEARING, type HearingCatalogue, type HearingWords } from '@shedbook/words';
import { usePracticeLanguage } from './words.tsx';

/** All that is said of hearing in the reader's language. */
export function useHearingCatalogue(): HearingCatalogue {
  return HEARING[usePracticeLanguage().tag];
}

/** The words in the reader's language. */
export function useHearingWords(): HearingWords {
  return useHearingCatalogue().words;
}
