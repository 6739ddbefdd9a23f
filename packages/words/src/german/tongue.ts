/** German. */
import type { Tongue } from '../language/tongue.ts';
import { syllables } from './counts.ts';
import { how, limbs, sides, theVoices, voices } from './drum-set.ts';

/** German. */
export const GERMAN_TONGUE: Tongue = {
  tag: 'de',
  locale: 'de',
  voices,
  theVoices,
  limbs,
  sides,
  how,
  syllables,
};
