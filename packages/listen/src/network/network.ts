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
import { type LayerWeights, runLayer } from './layer.ts';

export type { LayerWeights } from './layer.ts';

/** The voices that are told apart; `click` is a metronome. */
export const HEARD_VOICES = [...VOICES, 'click'] as const;
export type HeardVoice = (typeof HEARD_VOICES)[number];
/** How many there are. */
export const HEARD_COUNT = HEARD_VOICES.length;

/** Numbers that the last layer reads. */
const EMBEDDING = 128;

/** Numbers in the description of an event that the second look compares. */
export const DESCRIPTION = 20;
/** Facts of a voice at an event, and hidden numbers, of the second look. */
export const FACTS = 14;
/** The first hidden layer of the second look. */
export const HIDDEN_1 = 32;
/** The second hidden layer of the second look. */
export const HIDDEN_2 = 24;

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
  { name: 'z', rows: DESCRIPTION, inputs: EMBEDDING, kernel: 1 },
  { name: 'proto', rows: 2 * HEARD_COUNT, inputs: DESCRIPTION, kernel: 1 },
  { name: 'f1', rows: HIDDEN_1, inputs: FACTS, kernel: 1 },
  { name: 'u', rows: HEARD_COUNT * HIDDEN_1, inputs: 2 * HEARD_COUNT + DESCRIPTION, kernel: 1 },
  { name: 'f2', rows: HIDDEN_2, inputs: HIDDEN_1, kernel: 1 },
  { name: 'f3', rows: 1, inputs: HIDDEN_2, kernel: 1 },
] as const;

/** The weights of the second look, which `decide/second-look.ts` works with. */
export interface SecondLookWeights {
  /** Means with each voice, then means without: DESCRIPTION numbers each. */
  readonly means: Float64Array;
  readonly shared: LayerWeights;
  readonly ofVoice: LayerWeights;
  readonly second: LayerWeights;
  readonly last: LayerWeights;
}

/** What `count` events gave: rows of 3 × 13 numbers (presence, offset, level) and of descriptions. */
export interface NetworkOutput {
  readonly out: Float64Array;
  readonly description: Float64Array;
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

  /** What the second look needs. */
  get secondLook(): SecondLookWeights {
    const [means, shared, ofVoice, second, last] = this.#layers.slice(-5) as [
      LayerWeights,
      LayerWeights,
      LayerWeights,
      LayerWeights,
      LayerWeights,
    ];
    return { means: means.weights, shared, ofVoice, second, last };
  }

  /** Runs `count` events. `short` and `long` hold SHORT_INPUTS and LONG_INPUTS numbers an event. */
  run(short: Float64Array, long: Float64Array, count: number): NetworkOutput {
    const joined = new Float64Array(count * 544);
    for (let event = 0; event < count; event += 1) this.#convolve(short, event, joined);
    const [, , , l1, d1, d2, out, z] = this.#layers as LayerWeights[];
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
      runLayer(layer, { ...pass, rectify });
      return output;
    };
    runLayer(l1!, {
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
    return {
      out: dense(out!, embedding, EMBEDDING, 3 * HEARD_COUNT, false),
      description: dense(z!, embedding, EMBEDDING, DESCRIPTION, false),
    };
  }

  #convolve(short: Float64Array, event: number, joined: Float64Array): void {
    const [c1, c2, c3] = this.#layers as LayerWeights[];
    const conv = (
      layer: LayerWeights,
      from: { input: Float64Array; channels: number; stride: number },
      to: { output: Float64Array; outputAt: number; count: number; rows: number },
    ) =>
      runLayer(layer, {
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
