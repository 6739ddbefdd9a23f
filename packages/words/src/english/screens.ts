/** English with a sentence for every fact that the screens say: a browser is not sent the others. */

import type { Language } from '../facts/say.ts';
import type { ScreenFact } from '../facts/sayable.ts';
import { ENGLISH_DESK } from './desk-facts.ts';
import { ENGLISH_HEARD } from './heard.ts';
import { ENGLISH_TONGUE } from './tongue.ts';

/** English on screens. */
export const ENGLISH_SCREENS: Language<ScreenFact> = {
  tongue: ENGLISH_TONGUE,
  sentences: { ...ENGLISH_HEARD.sentences, ...ENGLISH_DESK.sentences },
};
