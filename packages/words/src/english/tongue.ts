/** English. */
import type { Tongue } from '../language/tongue.ts';
import { syllables } from './counts.ts';
import { how, limbs, sides, theVoices, voices } from './drum-set.ts';

/** English: formatted as in Britain, where lists have no comma before "and". */
export const ENGLISH_TONGUE: Tongue = {
  tag: 'en',
  locale: 'en-GB',
  voices,
  theVoices: { nominative: theVoices, dative: theVoices },
  limbs,
  sides,
  how,
  syllables,
};
