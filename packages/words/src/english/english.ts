/** English with a sentence for every fact. */

import type { Language } from '../facts/say.ts';
import type { Sayable } from '../facts/sayable.ts';
import { difference } from './facts/difference.ts';
import { faults } from './facts/faults.ts';
import { midi } from './facts/midi.ts';
import { musicxml } from './facts/musicxml.ts';
import { soundFont } from './facts/sound-font.ts';
import { ENGLISH_SCREENS } from './screens.ts';
import { ENGLISH_TONGUE } from './tongue.ts';

/** English. */
export const ENGLISH: Language<Sayable> = {
  tongue: ENGLISH_TONGUE,
  sentences: { ...ENGLISH_SCREENS.sentences, ...midi, ...musicxml, ...soundFont, ...difference, ...faults },
};
