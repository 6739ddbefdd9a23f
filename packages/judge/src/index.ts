/** Judging: from what was heard to a verdict and remarks, as facts. */
export * from './loop/heard.ts';
export * from './loop/judge.ts';
export * from './loop/level.data.ts';
export { APART_MS, type Reason } from './loop/reasons.ts';
export * from './loop/task.ts';
export { allowedMs, justNoticeableMs } from './loop/tolerance.ts';
export { limbName, placeName, whoPlays } from './loop/words.ts';
export { DISPLACEMENT, LEVEL_LIMITS, LISTENER_LEVELS, type ListenerLevel } from './perception/limits.data.ts';
export { justNoticedMs } from './perception/limits.ts';
export * from './remarks/remark.ts';
export { remarksOn } from './remarks/remarks.ts';
