/** English with a sentence for every fact that the screens say: a browser is not sent the others. */

import type { Language } from '../facts/say.ts';
import type { ScreenFact } from '../facts/sayable.ts';
import { changes } from './facts/changes.ts';
import { difficulty } from './facts/difficulty.ts';
import { ideas } from './facts/ideas.ts';
import { lesson } from './facts/lesson.ts';
import { log } from './facts/log.ts';
import { notes } from './facts/notes.ts';
import { passes } from './facts/passes.ts';
import { patterns } from './facts/patterns.ts';
import { values } from './facts/values.ts';
import { ENGLISH_HEARD } from './heard.ts';
import { ENGLISH_TONGUE } from './tongue.ts';

/** English on screens. */
export const ENGLISH_SCREENS: Language<ScreenFact> = {
  tongue: ENGLISH_TONGUE,
  sentences: {
    ...ENGLISH_HEARD.sentences,
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
