/** German with a sentence for every fact of hearing and judging: students' pages are sent no others. */

import type { Language } from '../facts/say.ts';
import type { HeardFact } from '../facts/sayable.ts';
import { coach } from './facts/coach.ts';
import { listening } from './facts/listening.ts';
import { places } from './facts/places.ts';
import { verdicts } from './facts/verdicts.ts';
import { GERMAN_TONGUE } from './tongue.ts';

/** German of what is heard. */
export const GERMAN_HEARD: Language<HeardFact> = {
  tongue: GERMAN_TONGUE,
  sentences: { ...places, ...coach, ...listening, ...verdicts },
};
