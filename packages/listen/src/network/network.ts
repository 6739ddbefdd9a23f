/**
 * The stroke network: from the patch at an event to what was struck there, when and how loud.
 *
 * Conventions: 13 voices in the order of {@link HEARD_VOICES}; presence as a logit; offset in ms from the
 * event; level in dB over the first 100 ms, relative to the patch's reference level.
 * Source: our own training on rendered takes, internal/listen-lab/train.py; three convolutions over short
 * frames, one layer over long frames, two layers over both (224 007 weights, 0.36 million products a patch).
 */
import { VOICES } from '@shedbook/core';
import { LONG_BANDS, LONG_CENTRES, SHORT_BANDS, SHORT_FRAMES } from '../signal/bands.data.ts';

/** The voices that are told apart; `click` is a metronome. */
export const HEARD_VOICES = [...VOICES, 'click'] as const;
export type HeardVoice = (typeof HEARD_VOICES)[number];
/** How many there are. */
export const HEARD_COUNT = HEARD_VOICES.length;

/** Numbers in the description of an event that the last layer reads. */
export const EMBEDDING = 128;

/** Inputs of a patch: short frames, long frames, and the take's mean long frame. */
export const SHORT_INPUTS = SHORT_FRAMES * SHORT_BANDS;
/** Numbers of a patch for pitch. */
export const LONG_INPUTS = (LONG_CENTRES.length + 1) * LONG_BANDS;

/** Shapes of the layers, in the order of the weights: rows, then what each row reads. */
export const LAYERS = [
  { name: 'c1', rows: 40, inputs: SHORT_BANDS, kernel: 3 },
  { name: 'c2', rows: 56, inputs: 40, kernel: 3 },
  { name: 'c3', rows: 64, inputs: 56, kernel: 3 },
  { name: 'l1', rows: 160, inputs: LONG_INPUTS, kernel: 1 },
  { name: 'd1', rows: 224, inputs: 544, kernel: 1 },
  { name: 'd2', rows: EMBEDDING, inputs: 224, kernel: 1 },
  { name: 'out', rows: 3 * HEARD_COUNT, inputs: EMBEDDING, kernel: 1 },
] as const;

/** One layer's weights, row by row (kernel position, then input), and one bias a row. */
export interface LayerWeights {
  readonly weights: Float64Array;
  readonly bias: Float64Array;
}

/** What `count` events gave: rows of 3 × 13 numbers (presence, offset, level) and of embeddings. */
export interface NetworkOutput {
  readonly out: Float64Array;
  readonly embedding: Float64Array;
}

interface Pass {
  readonly input: Float64Array;
  readonly inputAt: number;
  /** From one row's window to the next. */
  readonly step: number;
  readonly count: number;
  readonly width: number;
  readonly rows: number;
  readonly output: Float64Array;
  readonly outputAt: number;
  readonly outputStep: number;
  readonly rectify: boolean;
}

/** Every row of `layer` over `count` windows of the input, four windows at a time. */
function run(layer: LayerWeights, pass: Pass): void {
  const { input, step, width, output, outputStep } = pass;
  const w = layer.weights;
  for (let at = 0; at < pass.count; at += 4) {
    const more = Math.min(4, pass.count - at);
    const i0 = pass.inputAt + at * step;
    const i1 = more > 1 ? i0 + step : i0;
    const i2 = more > 2 ? i0 + 2 * step : i0;
    const i3 = more > 3 ? i0 + 3 * step : i0;
    const to = pass.outputAt + at * outputStep;
    for (let row = 0; row < pass.rows; row += 1) {
      let s0 = layer.bias[row]!;
      let s1 = s0;
      let s2 = s0;
      let s3 = s0;
      const from = row * width;
      for (let k = 0; k < width; k += 1) {
        const weight = w[from + k]!;
        s0 += weight * input[i0 + k]!;
        s1 += weight * input[i1 + k]!;
        s2 += weight * input[i2 + k]!;
        s3 += weight * input[i3 + k]!;
      }
      if (pass.rectify) {
        s0 = Math.max(s0, 0);
        s1 = Math.max(s1, 0);
        s2 = Math.max(s2, 0);
        s3 = Math.max(s3, 0);
      }
      output[to + row] = s0;
      if (more > 1) output[to + outputStep + row] = s1;
      if (more > 2) output[to + 2 * outputStep + row] = s2;
      if (more > 3) output[to + 3 * outputStep + row] = s3;
    }
  }
}

/** A network ready to run; it keeps its scratch memory. */
export class StrokeNetwork {
  readonly #layers: readonly LayerWeights[];
  // Convolution inputs with one empty frame on each side.
  readonly #x1 = new Float64Array((SHORT_FRAMES + 2) * SHORT_BANDS);
  readonly #x2 = new Float64Array((SHORT_FRAMES + 2) * 40);
  readonly #x3 = new Float64Array((SHORT_FRAMES / 2 + 2) * 56);
  readonly #x4 = new Float64Array(6 * 64);

  constructor(layers: readonly LayerWeights[]) {
    this.#layers = layers;
  }

  /** Runs `count` events. `short` and `long` hold SHORT_INPUTS and LONG_INPUTS numbers an event. */
  run(short: Float64Array, long: Float64Array, count: number): NetworkOutput {
    const joined = new Float64Array(count * 544);
    for (let event = 0; event < count; event += 1) this.#convolve(short, event, joined);
    const [, , , l1, d1, d2, out] = this.#layers as LayerWeights[];
    const dense = (
      layer: LayerWeights,
      input: Float64Array,
      width: number,
      rows: number,
      rectify: boolean,
    ) => {
      const output = new Float64Array(count * rows);
      const pass = {
        input,
        inputAt: 0,
        step: width,
        count,
        width,
        rows,
        output,
        outputAt: 0,
        outputStep: rows,
      };
      run(layer, { ...pass, rectify });
      return output;
    };
    run(l1!, {
      input: long,
      inputAt: 0,
      step: LONG_INPUTS,
      count,
      width: LONG_INPUTS,
      rows: 160,
      output: joined,
      outputAt: 384,
      outputStep: 544,
      rectify: true,
    });
    const hidden = dense(d1!, joined, 544, 224, true);
    const embedding = dense(d2!, hidden, 224, EMBEDDING, true);
    return { out: dense(out!, embedding, EMBEDDING, 3 * HEARD_COUNT, false), embedding };
  }

  #convolve(short: Float64Array, event: number, joined: Float64Array): void {
    const [c1, c2, c3] = this.#layers as LayerWeights[];
    const conv = (
      layer: LayerWeights,
      from: { input: Float64Array; channels: number; stride: number },
      to: { output: Float64Array; outputAt: number; count: number; rows: number },
    ) =>
      run(layer, {
        input: from.input,
        inputAt: 0,
        step: from.stride * from.channels,
        width: 3 * from.channels,
        ...to,
        outputStep: to.rows,
        rectify: true,
      });
    this.#x1.set(short.subarray(event * SHORT_INPUTS, (event + 1) * SHORT_INPUTS), SHORT_BANDS);
    conv(
      c1!,
      { input: this.#x1, channels: 24, stride: 1 },
      { output: this.#x2, outputAt: 40, count: 24, rows: 40 },
    );
    conv(
      c2!,
      { input: this.#x2, channels: 40, stride: 2 },
      { output: this.#x3, outputAt: 56, count: 12, rows: 56 },
    );
    conv(
      c3!,
      { input: this.#x3, channels: 56, stride: 2 },
      { output: this.#x4, outputAt: 0, count: 6, rows: 64 },
    );
    // The training script flattens channel by channel.
    for (let frame = 0; frame < 6; frame += 1) {
      for (let channel = 0; channel < 64; channel += 1) {
        joined[event * 544 + channel * 6 + frame] = this.#x4[frame * 64 + channel]!;
      }
    }
  }
}
