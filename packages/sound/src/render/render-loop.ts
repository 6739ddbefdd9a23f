/**
 * A loop: what rings over the last bar line is heard over the first bar, as when a drummer goes round.
 *
 * Conventions: the loop is exactly as long as its bars (to the nearest sample); sample n sounds what a player
 * going round for ever would sound there: y[n] + y[n + N] + y[n + 2N] + …
 */
import { Seconds, secondsToSamples } from '@shedbook/core';
import { normaliseLoudness } from '../loudness/normalise.ts';
import type { StereoAudio } from '../stereo.ts';
import { type Renderable, type RenderOptions, render } from './render.ts';

/** How a loop is rendered. */
export interface RenderLoopOptions extends Omit<RenderOptions, 'tail'> {
  /** Where the loop starts, in seconds: the end of the count-in. 0 unless told. */
  readonly fromSeconds?: Seconds;
}

/** Adds everything past the end to the start, over and over. */
function fold(tail: Float32Array, length: number): Float32Array {
  const loop = tail.slice(0, length);
  for (let i = length; i < tail.length; i += 1) {
    const at = i % length;
    loop[at] = (loop[at] as number) + (tail[i] as number);
  }
  return loop;
}

/**
 * A seamless loop of a performance.
 * @throws RangeError when nothing is left between `fromSeconds` and the last bar line.
 */
export function renderLoop(performance: Renderable, options: RenderLoopOptions): StereoAudio {
  const { fromSeconds = Seconds(0), loudnessLufs, ...rest } = options;
  const durationSeconds = Seconds(performance.durationSeconds - fromSeconds);
  const length = secondsToSamples(durationSeconds, options.kit.sampleRateHz);
  if (!(length > 0)) {
    throw new RangeError(
      `At fromSeconds: found ${fromSeconds}, expected less than the ${performance.durationSeconds} s of the performance`,
    );
  }
  const strokes = performance.strokes
    .filter((stroke) => stroke.timeSeconds >= fromSeconds - 1e-9)
    .map((stroke) => ({ ...stroke, timeSeconds: Seconds(Math.max(0, stroke.timeSeconds - fromSeconds)) }));
  const once = render({ strokes, durationSeconds }, { ...rest, tail: 'ring' });
  const loop = { ...once, left: fold(once.left, length), right: fold(once.right, length) };
  return loudnessLufs === undefined ? loop : normaliseLoudness(loop, loudnessLufs).audio;
}
