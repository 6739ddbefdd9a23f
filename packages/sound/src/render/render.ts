/**
 * A whole performance as sound, made with the same renderer that plays in blocks.
 *
 * Conventions: seconds from the start of the rendering, count-in included.
 */
import { type Lufs, type Performance, secondsToSamples } from '@shedbook/core';
import { normaliseLoudness } from '../loudness/normalise.ts';
import type { StereoAudio } from '../stereo.ts';
import { createRenderer, type Renderer, type RendererOptions } from './renderer.ts';
import type { SoundingStroke } from './sound-of.ts';

/** What is needed of a performance. */
export type Renderable = Pick<Performance, 'durationSeconds'> & {
  readonly strokes: readonly SoundingStroke[];
};

/** How a performance is rendered. */
export interface RenderOptions extends RendererOptions {
  /** `ring`: until the last cymbal has died; `cut`: exactly to the last bar line. `ring` unless told. */
  readonly tail?: 'ring' | 'cut';
  /** Loudness to set, in LUFS; the kit's own level where left out. See {@link normaliseLoudness}. */
  readonly loudnessLufs?: Lufs;
  /** Called with the part that is done, 0…1, a few times a second of work. */
  readonly onProgress?: (part: number) => void;
}

const BLOCK = 4096;
/** What rings longer than this after the last bar is cut. */
const LONGEST_TAIL_SECONDS = 12;

/** Renders blocks into growing buffers until `isDone`. */
function collect(
  renderer: Renderer,
  expected: number,
  isDone: (position: number) => boolean,
  report: (part: number) => void,
) {
  let left = new Float32Array(expected);
  let right = new Float32Array(expected);
  for (let position = 0; !isDone(position); position += BLOCK) {
    if (position + BLOCK > left.length) {
      left = grown(left, position + 64 * BLOCK);
      right = grown(right, position + 64 * BLOCK);
    }
    renderer.render(
      left.subarray(position, position + BLOCK),
      right.subarray(position, position + BLOCK),
      BLOCK,
    );
    if (position % (BLOCK * 256) === 0) report(Math.min(1, position / expected));
  }
  return { left, right };
}

function grown(buffer: Float32Array, length: number): Float32Array<ArrayBuffer> {
  const larger = new Float32Array(length);
  larger.set(buffer);
  return larger;
}

/**
 * The sound of a performance.
 * @returns stereo at the kit's sample rate, from the first sample of the count-in to the end of the tail.
 */
export function render(performance: Renderable, options: RenderOptions): StereoAudio {
  const renderer = createRenderer(options);
  const rate = renderer.sampleRateHz;
  renderer.schedule(performance.strokes);
  const bars = secondsToSamples(performance.durationSeconds, rate);
  const isDone =
    options.tail === 'cut'
      ? (position: number) => position >= bars
      : (position: number) =>
          position >= bars && (renderer.isSilent() || position >= bars + LONGEST_TAIL_SECONDS * rate);
  const expected = bars + (options.tail === 'cut' ? BLOCK : 6 * rate);
  const { left, right } = collect(renderer, expected, isDone, options.onProgress ?? (() => {}));
  const length = options.tail === 'cut' ? bars : renderer.position();
  const audio = { left: left.slice(0, length), right: right.slice(0, length), sampleRateHz: rate };
  return options.loudnessLufs === undefined ? audio : normaliseLoudness(audio, options.loudnessLufs).audio;
}
