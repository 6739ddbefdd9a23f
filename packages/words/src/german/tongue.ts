/** German. */
import type { Tongue } from '../language/tongue.ts';
import { limbs, sides, voices } from './drum-set.ts';

/** German. */
export const GERMAN_TONGUE: Tongue = { tag: 'de', locale: 'de', voices, limbs, sides };
