/**
 * The stroke network: from the patch at an event to what was struck there, when and how loud.
 *
 * Conventions: 13 voices in the order of {@link HEARD_VOICES}; presence as a logit; offset in ms from the
 * event; level K-weighted (ITU-R BS.1770-4), in dB over the first 100 ms, relative to the patch's reference level.
 * Source: our own training on rendered takes, internal/listen-lab/train.py; three convolutions over short
 * frames, one layer over long frames, two layers over both (224 007 weights, 0.36 million products a patch).
 */
import { LONG_BANDS, LONG_CENTRES, SHORT_BANDS, SHORT_FRAMES } from '../signal/bands.data.ts';
import { HEARD_COUNT, HEARD_VOICES } from './heard-voices.data.ts';
import { type Layer, type LayerPass, type LayerWeights, layOut, runDense, runLayer } from './layer.ts';

export type { LayerWeights } from './layer.ts';

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
  /** One layer for each voice: what it reads is its event's numbers and then its facts. */
  readonly first: readonly Layer[];
  readonly second: Layer;
  readonly last: Layer;
}

/** What `count` events gave: rows of 3 × 13 numbers (presence, offset, level) and of descriptions. */
export interface NetworkOutput {
  readonly out: Float64Array;
  readonly description: Float64Array;
}

/** Numbers that the first dense layer reads: frames of the last convolution, then the layer of the long frames. */
const JOINED = 544;
const LAST_FRAMES = 6;
const LAST_CHANNELS = 64;

/** The first dense layer for frames that follow one another: training had them channel by channel. */
function frameByFrame({ weights, bias }: LayerWeights): LayerWeights {
  const turned = weights.slice();
  for (let row = 0; row < weights.length; row += JOINED) {
    for (let frame = 0; frame < LAST_FRAMES; frame += 1) {
      const to = row + frame * LAST_CHANNELS;
      let from = row + frame;
      for (let channel = 0; channel < LAST_CHANNELS; channel += 1) {
        turned[to + channel] = weights[from]!;
        from += LAST_FRAMES;
      }
    }
  }
  return { weights: turned, bias };
}

/** The first layer of the second look for one voice: its own part, then the part that all voices share. */
function ofVoice(voice: number, own: LayerWeights, shared: LayerWeights): LayerWeights {
  const inputs = 2 * HEARD_COUNT + DESCRIPTION;
  const width = inputs + FACTS;
  const weights = new Float64Array(HIDDEN_1 * width);
  for (let row = 0; row < HIDDEN_1; row += 1) {
    const from = (voice * HIDDEN_1 + row) * inputs;
    weights.set(own.weights.subarray(from, from + inputs), row * width);
    weights.set(shared.weights.subarray(row * FACTS, (row + 1) * FACTS), row * width + inputs);
  }
  return { weights, bias: own.bias.subarray(voice * HIDDEN_1, (voice + 1) * HIDDEN_1) };
}

type Named = Readonly<Record<(typeof LAYERS)[number]['name'], LayerWeights>>;

function byName(layers: readonly LayerWeights[]): Named {
  return Object.fromEntries(LAYERS.map(({ name }, index) => [name, layers[index]])) as Named;
}

/** A network ready to run; it keeps its scratch memory. */
export class StrokeNetwork {
  readonly #convolutions: readonly [Layer, Layer, Layer];
  readonly #long: Layer;
  readonly #dense: readonly [Layer, Layer];
  readonly #out: Layer;
  readonly #description: Layer;
  /** What the second look needs. */
  readonly secondLook: SecondLookWeights;
  // Convolution inputs with one empty frame on each side.
  readonly #x1 = new Float64Array((SHORT_FRAMES + 2) * SHORT_BANDS);
  readonly #x2 = new Float64Array((SHORT_FRAMES + 2) * 40);
  readonly #x3 = new Float64Array((SHORT_FRAMES / 2 + 2) * 56);

  /** @param layers in the order of LAYERS */
  constructor(layers: readonly LayerWeights[]) {
    const { c1, c2, c3, l1, d1, d2, out, z, proto, f1, u, f2, f3 } = byName(layers);
    this.#convolutions = [layOut(c1), layOut(c2), layOut(c3)];
    this.#long = layOut(l1);
    this.#dense = [layOut(frameByFrame(d1)), layOut(d2)];
    this.#out = layOut(out);
    this.#description = layOut(z);
    this.secondLook = {
      means: proto.weights,
      first: HEARD_VOICES.map((_, voice) => layOut(ofVoice(voice, u, f1))),
      second: layOut(f2),
      last: layOut(f3),
    };
  }

  /** Runs `count` events. `short` and `long` hold SHORT_INPUTS and LONG_INPUTS numbers an event. */
  run(short: Float64Array, long: Float64Array, count: number): NetworkOutput {
    const joined = new Float64Array(count * JOINED);
    for (let event = 0; event < count; event += 1) this.#convolve(short, event, joined);
    runLayer(this.#long, {
      input: long,
      inputAt: 0,
      step: LONG_INPUTS,
      count,
      output: joined,
      outputAt: LAST_FRAMES * LAST_CHANNELS,
      outputStep: JOINED,
      rectify: true,
    });
    const [first, second] = this.#dense;
    const embedding = runDense(second, runDense(first, joined, true), true);
    return {
      out: runDense(this.#out, embedding, false),
      description: runDense(this.#description, embedding, false),
    };
  }

  #convolve(short: Float64Array, event: number, joined: Float64Array): void {
    const [c1, c2, c3] = this.#convolutions;
    this.#x1.set(short.subarray(event * SHORT_INPUTS, (event + 1) * SHORT_INPUTS), SHORT_BANDS);
    convolve(c1, this.#x1, SHORT_BANDS, { output: this.#x2, outputAt: 40, count: SHORT_FRAMES });
    convolve(c2, this.#x2, 2 * 40, { output: this.#x3, outputAt: 56, count: SHORT_FRAMES / 2 });
    convolve(c3, this.#x3, 2 * 56, { output: joined, outputAt: event * JOINED, count: LAST_FRAMES });
  }
}

/** Runs a convolution, its windows `step` apart, into frames that follow one another. */
function convolve(
  layer: Layer,
  input: Float64Array,
  step: number,
  { output, outputAt, count }: Pick<LayerPass, 'output' | 'outputAt' | 'count'>,
): void {
  const outputStep = layer.rows;
  runLayer(layer, { input, inputAt: 0, step, count, output, outputAt, outputStep, rectify: true });
}
