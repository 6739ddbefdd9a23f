/** English with a sentence for every fact. */

import type { Language } from '../facts/say.ts';
import type { Sayable } from '../facts/sayable.ts';
import { difficulty } from './facts/difficulty.ts';
import { faults } from './facts/faults.ts';
import { lesson } from './facts/lesson.ts';
import { log } from './facts/log.ts';
import { midi } from './facts/midi.ts';
import { musicxml } from './facts/musicxml.ts';
import { notes } from './facts/notes.ts';
import { patterns } from './facts/patterns.ts';
import { places } from './facts/places.ts';
import { values } from './facts/values.ts';
import { ENGLISH_TONGUE } from './tongue.ts';

/** English. */
export const ENGLISH: Language<Sayable> = {
  tongue: ENGLISH_TONGUE,
  sentences: {
    ...values,
    ...patterns,
    ...lesson,
    ...log,
    ...midi,
    ...musicxml,
    ...faults,
    ...places,
    ...difficulty,
    ...notes,
  },
};
