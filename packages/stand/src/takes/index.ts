/** A take beside its model: loaded where takes are heard, not with the first page. */
export { Comparison, renderStrokes, SIDES, type Side } from './comparison.ts';
export { matchingGain, modelStrokes, playedStrokes } from './model.ts';
export type { Rendered, RenderRequest } from './model.worker.ts';
export type { PlayedTake, TakeLoop } from './played-take.ts';
export { type Slow, SPEEDS } from './round.ts';
export { slowSamples } from './slow-sound.ts';
export { type ReplayState, type RoundMeans, type RoundOf, type RoundReplay, useRound } from './use-round.ts';
