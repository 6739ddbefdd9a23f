/** Judging: from what was heard to a verdict and remarks, as facts. */

export type { JudgeFact } from './fact.ts';
export * from './level/levels.data.ts';
export { readLevel } from './level/read-level.ts';
export type * from './loop/fact.ts';
export * from './loop/heard.ts';
export * from './loop/judge.ts';
export * from './loop/played.ts';
export type { Reason } from './loop/reasons.ts';
export * from './loop/task.ts';
export { type Player, placeOf, whoPlays } from './loop/tell-fault.ts';
export { APART_MS, DISPLACEMENT, TEMPO_PERCENT } from './perception/perception.data.ts';
export { allowedMs, justNoticedMs } from './perception/perception.ts';
export * from './remarks/remark.ts';
export { remarksOn } from './remarks/remarks.ts';
