/**
 * How a day with an exercise went: from the verdicts on its loops to a grade for spacing.
 *
 * Conventions: a stumble counts 0, a loose loop 1, a clean one 2; the grade follows the mean of the loops that
 * were heard. `easy` needs every loop clean at the goal tempo or above, heard by an ear or the teacher. A day on which any loop
 * was better, all else equal, is never graded worse. The bounds are our choice.
 */

import type { HeardBy, LoopRecord, LoopVerdict } from '@shedbook/core';
import { mean } from '@shedbook/signal';
import type { ReviewGrade } from './card.ts';

/** What a day is graded against. */
export interface GradeRule {
  readonly goalBpm: number;
  /** Clean loops that are enough for `easy`. */
  readonly cleanLoops: number;
  readonly heardBy: HeardBy;
}

const POINTS: Readonly<Record<Exclude<LoopVerdict, 'unheard'>, number>> = { stumble: 0, loose: 1, clean: 2 };

const HARD_FROM = 0.75;
const GOOD_FROM = 1.35;

/** The grade of a day's loops, or null when none of them was heard. */
export function gradeLoops(loops: readonly LoopRecord[], rule: GradeRule): ReviewGrade | null {
  const heard = loops.filter((loop) => loop.verdict !== 'unheard');
  if (heard.length === 0) return null;
  const points = mean(heard.map(({ verdict }) => POINTS[verdict as keyof typeof POINTS]));
  if (points < HARD_FROM) return 'again';
  if (points < GOOD_FROM) return 'hard';
  const isEasy =
    rule.heardBy !== 'student' &&
    heard.length >= rule.cleanLoops &&
    heard.every((loop) => loop.verdict === 'clean' && loop.bpm >= rule.goalBpm);
  return isEasy ? 'easy' : 'good';
}
