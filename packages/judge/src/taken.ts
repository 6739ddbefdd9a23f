/** The verdict on a take that was kept: on the device that it was played on, and on the desk that it was sent to. */
import { type Bpm, exerciseKey, type Form, type FullReport, type Lesson, type Limb } from '@shedbook/core';
import { type Judgement, judge } from './judge.ts';
import type { Level } from './level/levels.data.ts';
import { judgeTaskOf } from './loop/played.ts';

/** A take as far as it is judged. */
export interface Taken {
  /** Lasting name of the exercise, or null for the groove alone. */
  readonly exercise: string | null;
  /** Layers of the groove that played, from 1. */
  readonly layers: number;
  /** Limbs that the student played; all of them where left out. */
  readonly mine?: readonly Limb[];
  /** Times through the form, with the quarter notes a minute of each. */
  readonly loops: readonly { readonly bpm: Bpm }[];
  /** Null where listening refused. */
  readonly report: FullReport | null;
}

/** Number of the take's exercise on today's sheet; null for the groove alone, undefined where it is gone. */
export function numberToday(lesson: Lesson, take: Pick<Taken, 'exercise'>): number | null | undefined {
  if (take.exercise === null) return null;
  return lesson.exercises.find((each) => exerciseKey(each) === take.exercise)?.number;
}

/** The verdict on a take; null where there is no report, or its exercise is gone from the sheet. */
export function judgeTaken(take: Taken, lesson: Lesson, form: Form, level: Level): Judgement | null {
  const exercise = numberToday(lesson, take);
  const bpm = take.loops.at(-1)?.bpm ?? lesson.tempo.startBpm;
  if (!take.report || exercise === undefined) return null;
  const { bpm: asked, ...task } = judgeTaskOf({
    ...{ lesson, exercise, form, bpm },
    layers: take.layers,
    mine: take.mine ?? [],
  });
  // a report that was kept without its click may have climbed the ladder: any rung was asked
  const told = take.report.click && asked !== undefined ? { bpm: asked } : {};
  return judge({ ...task, ...told }, { report: take.report }, level);
}
