/** Judging: from what was heard to a verdict and remarks, as facts. */
export * from './level/levels.data.ts';
export { readLevel } from './level/read-level.ts';
export * from './loop/heard.ts';
export * from './loop/judge.ts';
export type { Reason } from './loop/reasons.ts';
export * from './loop/task.ts';
export { limbName, placeName, whoPlays } from './loop/words.ts';
export { APART_MS, DISPLACEMENT, TEMPO_PERCENT } from './perception/perception.data.ts';
export { allowedMs, justNoticedMs } from './perception/perception.ts';
export * from './remarks/remark.ts';
export { remarksOn } from './remarks/remarks.ts';
