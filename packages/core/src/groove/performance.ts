/**
 * A performance: the strokes of one exercise in one form at one tempo, with the bars they lie in.
 *
 * Conventions: seconds from the start of the rendering, count-in included; bars from 1, count-in bars 0, −1, …
 */
import type { Seconds } from '../units.ts';
import type { Stroke } from './stroke.ts';

/** A bar of the rendering and when it sounds. */
export interface PerformedBar {
  readonly bar: number;
  readonly play: 'count-in' | 'pattern' | 'time' | 'rest';
  /** Bar of the exercise's pattern (from 0) that is played, or null. */
  readonly patternBar: number | null;
  /** Beats that click, from 1, since the form says so; left out where it says nothing. */
  readonly click?: readonly number[];
  readonly startSeconds: Seconds;
  readonly durationSeconds: Seconds;
}

/** Everything that is played, in order, with the bars it lies in. */
export interface Performance {
  /** In order of time. */
  readonly strokes: readonly Stroke[];
  readonly bars: readonly PerformedBar[];
  readonly countInSeconds: Seconds;
  /** To the last bar line; what rings on after it is not counted. */
  readonly durationSeconds: Seconds;
}
