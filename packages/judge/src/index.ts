/** Judging: from what was heard to a verdict, as facts. */

export { asJudged } from './as-judged.ts';
export type { JudgeFact } from './fact.ts';
export * from './judge.ts';
export * from './level/levels.data.ts';
export { readLevel } from './level/read-level.ts';
export * from './loop/played.ts';
export * from './loop/task.ts';
export { type Player, placeOf, whoPlays } from './loop/who-and-where.ts';
export * from './other-form.ts';
export { APART_MS, DISPLACEMENT, TEMPO_PERCENT } from './perception/perception.data.ts';
export { allowedMs, justNoticedMs } from './perception/perception.ts';
export { judgeTaken, numberToday, type Taken } from './taken.ts';
export { adviceOn, figureOf } from './verdict/advice.ts';
export type * from './verdict/fact.ts';
export { LOOP_VERDICT, recordRound } from './verdict/record.ts';
export * from './verdict/verdict.ts';
export * from './which-exercise.ts';
