/** English with a sentence for every fact of hearing and judging: students' pages are sent no others. */

import type { Language } from '../facts/say.ts';
import type { HeardFact } from '../facts/sayable.ts';
import { coach } from './facts/coach.ts';
import { listening } from './facts/listening.ts';
import { places } from './facts/places.ts';
import { verdicts } from './facts/verdicts.ts';
import { ENGLISH_TONGUE } from './tongue.ts';

/** English of what is heard. */
export const ENGLISH_HEARD: Language<HeardFact> = {
  tongue: ENGLISH_TONGUE,
  sentences: { ...places, ...coach, ...listening, ...verdicts },
};
