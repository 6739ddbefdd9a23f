/** German with a sentence for every fact that the desk says of lessons: what is said of students comes when it is read. */

import type { Language } from '../facts/say.ts';
import type { DeskFact } from '../facts/sayable.ts';
import { changes } from './facts/changes.ts';
import { difficulty } from './facts/difficulty.ts';
import { ideas } from './facts/ideas.ts';
import { lesson } from './facts/lesson.ts';
import { log } from './facts/log.ts';
import { notes } from './facts/notes.ts';
import { passes } from './facts/passes.ts';
import { patterns } from './facts/patterns.ts';
import { places } from './facts/places.ts';
import { values } from './facts/values.ts';
import { GERMAN_TONGUE } from './tongue.ts';

/** German on the desk. */
export const GERMAN_DESK: Language<DeskFact> = {
  tongue: GERMAN_TONGUE,
  sentences: {
    ...places,
    ...values,
    ...log,
    ...patterns,
    ...lesson,
    ...difficulty,
    ...ideas,
    ...passes,
    ...notes,
    ...changes,
  },
};
