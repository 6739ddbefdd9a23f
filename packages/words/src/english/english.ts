/** English with a sentence for every fact. */

import type { Language } from '../facts/say.ts';
import type { Sayable } from '../facts/sayable.ts';
import { difficulty } from './facts/difficulty.ts';
import { places } from './facts/places.ts';
import { ENGLISH_TONGUE } from './tongue.ts';

/** English. */
export const ENGLISH: Language<Sayable> = { tongue: ENGLISH_TONGUE, sentences: { ...places, ...difficulty } };
