/**
 * Sounds whose level is known: whatever is mixed from them is as loud as it was asked to be.
 *
 * The level of a stroke is its K-weighted mean square over the first 100 ms. Two takes mixed with gains a and b
 * have the energy a²·P + 2ab·Q + b²·R, so three numbers for each pair of takes are all it needs.
 *
 * What rings for long is kept in two parts: a head in many takes and one tail a layer, joined by a crossfade. It
 * is the head by which the ear tells strokes apart, and little memory is what makes mixing fast.
 *
 * Conventions: energies are K-weighted mean squares over `LEVEL_WINDOW_SECONDS` from the onset, mono.
 * Source: ITU-R BS.1770-4 for the weighting; the window is ours.
 */
import { Lufs, Seconds } from '@shedbook/core';
import { dbToGain, kWeighted, lufsToPower } from '@shedbook/signal';
import { type Layer, padTakes, type RawSound } from './sound.ts';

/** Over how long a stroke's level is measured, from its onset. */
export const LEVEL_WINDOW_SECONDS = Seconds(0.1);

/** K-weighted level, in LUFS, of the first 100 ms of a stroke at 0 dB, before loudness is set. */
export const PLAIN_STROKE_LUFS = Lufs(-23);

const PLAIN_POWER = lufsToPower(PLAIN_STROKE_LUFS);

/** How far the fullest wash of a stroke lies under the stroke, in dB. */
const WASH_BELOW_DB = 5;

interface Take {
  readonly samples: Float32Array;
  readonly weighted: Float64Array;
  /** Around the crossfade, where there is one. */
  readonly late: Float32Array;
}

interface MeasuredLayer {
  readonly driveDb: number;
  readonly takes: readonly Take[];
  /** What follows the head, from `TAIL_FROM_SECONDS` on, or null where the head is all. */
  readonly tail: { readonly samples: Float32Array; readonly late: Float32Array } | null;
}

/** A sound that can be mixed at any level. */
export interface MeasuredSound {
  readonly layers: readonly MeasuredLayer[];
  readonly wash: readonly Float32Array[];
  /** Power of 100 ms of its ringing, relative to that of the first 100 ms, every `FADING_STEP_SECONDS`. */
  readonly fading: Float64Array;
  /** The same for its wash at full gain. */
  readonly washFading: Float64Array;
}

/** One stroke as a mix of two takes, and what rings on after them. */
export interface Blend {
  readonly soft: Float32Array;
  /** Factor of the soft take's amplitude. */
  readonly softGain: number;
  readonly hard: Float32Array;
  /** Factor of the hard take's amplitude. */
  readonly hardGain: number;
  readonly tail: Float32Array | null;
  /** Factor of the tail's amplitude. */
  readonly tailGain: number;
}

/** Where a tail begins, after the onset. */
export const TAIL_FROM_SECONDS = 0.45;
const CROSSFADE_SECONDS = 0.12;
/** Shorter sounds are not divided. */
const DIVIDED_FROM_SECONDS = 1.2;

/** Which takes a stroke mixes: all numbers 0…1, drawn anew for every stroke. */
export interface Choice {
  readonly softTake: number;
  readonly hardTake: number;
  /** Number 0…1: moves the timbre by up to ±`TIMBRE_SPREAD_DB` / 2. */
  readonly timbre: number;
}

/** No drummer strikes twice alike: by how much the timbre of equally loud strokes differs, in dB of drive. */
export const TIMBRE_SPREAD_DB = 2;

/** A take cut into a head that fades out and a tail that fades in over the same samples. */
function divide(samples: Float32Array, rate: number): { head: Float32Array; tail: Float32Array | null } {
  if (samples.length < DIVIDED_FROM_SECONDS * rate) return { head: samples, tail: null };
  const from = Math.round(TAIL_FROM_SECONDS * rate);
  const fade = Math.round(CROSSFADE_SECONDS * rate);
  const head = samples.slice(0, from + fade);
  const tail = samples.slice(from);
  for (let i = 0; i < fade; i += 1) {
    const angle = ((i + 0.5) / fade) * (Math.PI / 2);
    head[from + i] = (head[from + i] as number) * Math.cos(angle) ** 2;
    tail[i] = (tail[i] as number) * Math.sin(angle) ** 2;
  }
  return { head, tail };
}

/** Scaled so that every take has the level of a plain stroke: layers are mixed by weight, not by strength. */
function measureTake(samples: Float32Array, rate: number): Take & { readonly tail: Float32Array | null } {
  const window = Math.round(LEVEL_WINDOW_SECONDS * rate);
  const start = new Float32Array(window);
  start.set(samples.subarray(0, window));
  const weighted = kWeighted(start, rate);
  const scale = Math.sqrt(PLAIN_POWER / Math.max(1e-20, meanProduct(weighted, weighted)));
  const scaled = samples.map((sample) => sample * scale);
  const { head, tail } = divide(scaled, rate);
  const from = Math.round(TAIL_FROM_SECONDS * rate);
  const late = tail ? scaled.slice(from, from + Math.round(CROSSFADE_SECONDS * rate)) : new Float32Array(0);
  return { samples: head, weighted: weighted.map((value) => value * scale), late, tail };
}

function measureLayer(layer: Layer, rate: number): MeasuredLayer {
  const takes = layer.takes.map((take) => measureTake(take, rate));
  const first = takes[0];
  const tail = first?.tail ? { samples: first.tail, late: first.late } : null;
  return { driveDb: layer.driveDb, takes: takes.map(({ tail: _, ...take }) => take), tail };
}

/** Scaled so that its loudest 100 ms have the level of a plain stroke less `WASH_BELOW_DB`. */
function scaleWash(samples: Float32Array, sampleRateHz: number): Float32Array {
  const window = Math.round(LEVEL_WINDOW_SECONDS * sampleRateHz);
  const weighted = kWeighted(samples, sampleRateHz);
  let loudest = 1e-20;
  for (let from = 0; from + window <= weighted.length; from += window >> 1) {
    const part = weighted.subarray(from, from + window);
    loudest = Math.max(loudest, meanProduct(part, part));
  }
  const scale = Math.sqrt(PLAIN_POWER / loudest) * dbToGain(-WASH_BELOW_DB);
  return samples.map((sample) => sample * scale);
}

function meanProduct(a: Float64Array | Float32Array, b: Float64Array | Float32Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i += 1) sum += (a[i] as number) * (b[i] as number);
  return sum / a.length;
}

/** How finely the fading of a sound is known. */
export const FADING_STEP_SECONDS = 0.05;

/** K-weighted power of 100 ms of a buffer, relative to a plain stroke's, step by step. */
function fadingOf(samples: Float32Array, rate: number): Float64Array {
  const step = Math.round(FADING_STEP_SECONDS * rate);
  const weighted = kWeighted(samples, rate);
  const sums = new Float64Array(Math.ceil(weighted.length / step) + 1);
  for (let i = 0; i < weighted.length; i += 1) {
    const at = Math.floor(i / step);
    sums[at] = (sums[at] as number) + (weighted[i] as number) ** 2;
  }
  return sums.map((sum, k) => (sum + (sums[k + 1] ?? 0)) / (2 * step * PLAIN_POWER));
}

/** The sound whose fading stands for all of them: the first take of the layer nearest to a plain stroke. */
function plainTake(layers: readonly Layer[]): Float32Array {
  const nearest = layers.reduce((best, each) =>
    Math.abs(each.driveDb) < Math.abs(best.driveDb) ? each : best,
  );
  return nearest.takes[0] as Float32Array;
}

function scaledTo(samples: Float32Array, fading: Float64Array): Float64Array {
  return samples.length > 0 ? fading.map((power) => power / (fading[0] as number)) : fading;
}

/** Measures a sound. */
export function measureSound(raw: RawSound, sampleRateHz: number): MeasuredSound {
  const layers = padTakes(raw.layers).map((layer) => measureLayer(layer, sampleRateHz));
  const plain = plainTake(raw.layers);
  const wash = raw.wash.map((samples) => scaleWash(samples, sampleRateHz));
  return {
    layers,
    wash,
    fading: scaledTo(plain, fadingOf(plain, sampleRateHz)),
    washFading: fadingOf(wash[0] ?? new Float32Array(0), sampleRateHz),
  };
}

const products = new WeakMap<object, WeakMap<object, number>>();

/** Mean product of two stretches, remembered: the same pairs come again and again. */
function knownProduct(a: Float64Array | Float32Array, b: Float64Array | Float32Array): number {
  const of = products.get(a) ?? new WeakMap<object, number>();
  products.set(a, of);
  const known = of.get(b) ?? meanProduct(a, b);
  of.set(b, known);
  return known;
}

/** Mean square of (1 − weight)·a + weight·b. */
function blendEnergy(a: Float64Array | Float32Array, b: Float64Array | Float32Array, weight: number): number {
  const cross = 2 * weight * (1 - weight) * knownProduct(a, b);
  return (1 - weight) ** 2 * knownProduct(a, a) + cross + weight ** 2 * knownProduct(b, b);
}

function pick<T>(from: readonly T[], part: number): T {
  return from[Math.min(from.length - 1, Math.floor(part * from.length))] as T;
}

/** The mix of takes for a stroke at a level: exactly `levelDb` above a plain stroke over its first 100 ms. */
export function blendStroke(sound: MeasuredSound, levelDb: number, choice: Choice): Blend {
  const drive = levelDb + (choice.timbre - 0.5) * TIMBRE_SPREAD_DB;
  const above = sound.layers.findIndex((layer) => layer.driveDb > drive);
  const hardIndex = above < 0 ? sound.layers.length - 1 : above;
  const softIndex = Math.max(0, hardIndex - 1);
  const [softLayer, hardLayer] = [sound.layers[softIndex], sound.layers[hardIndex]];
  if (!softLayer || !hardLayer) throw new RangeError('Internal error: a sound without layers');
  const span = hardLayer.driveDb - softLayer.driveDb;
  const weight = span > 0 ? Math.min(0.94, Math.max(0.06, (drive - softLayer.driveDb) / span)) : 0.5;
  const [soft, hard] = [pick(softLayer.takes, choice.softTake), pick(hardLayer.takes, choice.hardTake)];
  const gain = dbToGain(levelDb) * Math.sqrt(PLAIN_POWER / blendEnergy(soft.weighted, hard.weighted, weight));
  const tail = weight < 0.5 ? softLayer.tail : hardLayer.tail;
  const tailGain = tail
    ? gain *
      Math.sqrt(
        blendEnergy(soft.late, hard.late, weight) / Math.max(1e-20, knownProduct(tail.late, tail.late)),
      )
    : 0;
  return {
    soft: soft.samples,
    softGain: gain * (1 - weight),
    hard: hard.samples,
    hardGain: gain * weight,
    tail: tail?.samples ?? null,
    tailGain,
  };
}
