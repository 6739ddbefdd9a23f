/** German with a sentence for every fact that the screens say: a browser is not sent the others. */

import type { Language } from '../facts/say.ts';
import type { ScreenFact } from '../facts/sayable.ts';
import { GERMAN_DESK } from './desk-facts.ts';
import { GERMAN_HEARD } from './heard.ts';
import { GERMAN_TONGUE } from './tongue.ts';

/** German on screens. */
export const GERMAN_SCREENS: Language<ScreenFact> = {
  tongue: GERMAN_TONGUE,
  sentences: { ...GERMAN_HEARD.sentences, ...GERMAN_DESK.sentences },
};
