/** English with a sentence for every fact that the screens say: a browser is not sent the others. */

import type { Language } from '../facts/say.ts';
import type { ScreenFact } from '../facts/sayable.ts';
import { changes } from './facts/changes.ts';
import { coach } from './facts/coach.ts';
import { difficulty } from './facts/difficulty.ts';
import { ideas } from './facts/ideas.ts';
import { lesson } from './facts/lesson.ts';
import { listening } from './facts/listening.ts';
import { log } from './facts/log.ts';
import { notes } from './facts/notes.ts';
import { passes } from './facts/passes.ts';
import { patterns } from './facts/patterns.ts';
import { places } from './facts/places.ts';
import { values } from './facts/values.ts';
import { verdicts } from './facts/verdicts.ts';
import { ENGLISH_TONGUE } from './tongue.ts';

/** English on screens. */
export const ENGLISH_SCREENS: Language<ScreenFact> = {
  tongue: ENGLISH_TONGUE,
  sentences: {
    ...values,
    ...patterns,
    ...lesson,
    ...log,
    ...places,
    ...difficulty,
    ...ideas,
    ...passes,
    ...notes,
    ...coach,
    ...listening,
    ...verdicts,
    ...changes,
  },
};
