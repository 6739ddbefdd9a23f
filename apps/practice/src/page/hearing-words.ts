/** The words of hearing, takes, plan, log and care that are in use. */
import { type HearingWords, hearingEnglish, hearingGerman } from '@shedbook/words';
import { usePracticeLanguage } from './words.tsx';

/** Catalogues by language tag. */
export const HEARING_CATALOGUES: Readonly<Record<string, HearingWords>> = {
  en: hearingEnglish,
  de: hearingGerman,
};

/** The words in the reader's language. */
export function useHearingWords(): HearingWords {
  const { tag } = usePracticeLanguage();
  return HEARING_CATALOGUES[tag] ?? hearingEnglish;
}
