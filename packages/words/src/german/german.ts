/** German with a sentence for every fact. */

import type { Language } from '../facts/say.ts';
import type { Sayable } from '../facts/sayable.ts';
import { difficulty } from './facts/difficulty.ts';
import { places } from './facts/places.ts';
import { GERMAN_TONGUE } from './tongue.ts';

/** German. */
export const GERMAN: Language<Sayable> = { tongue: GERMAN_TONGUE, sentences: { ...places, ...difficulty } };
