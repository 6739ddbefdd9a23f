/** German with a sentence for every fact. */

import type { Language } from '../facts/say.ts';
import type { Sayable } from '../facts/sayable.ts';
import { difference } from './facts/difference.ts';
import { faults } from './facts/faults.ts';
import { midi } from './facts/midi.ts';
import { musicxml } from './facts/musicxml.ts';
import { soundFont } from './facts/sound-font.ts';
import { GERMAN_SCREENS } from './screens.ts';
import { GERMAN_TONGUE } from './tongue.ts';

/** German. */
export const GERMAN: Language<Sayable> = {
  tongue: GERMAN_TONGUE,
  sentences: { ...GERMAN_SCREENS.sentences, ...midi, ...musicxml, ...soundFont, ...difference, ...faults },
};
