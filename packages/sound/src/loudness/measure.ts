/**
 * Loudness: integrated, momentary, short-term, its range, and the true peak.
 *
 * Conventions: LUFS for levels, LU for differences, dBTP for true peaks; silence is −Infinity. Momentary and
 * short-term are the highest that occur.
 * Sources: ITU-R BS.1770-4 (weighting, blocks of 400 ms overlapping by 75 %, gates at −70 LUFS and −10 LU);
 * EBU Tech 3341 (momentary 400 ms, short-term 3 s); EBU Tech 3342 (range: 3 s blocks ten times a second, gates
 * at −70 LUFS and −20 LU, 10th to 95th percentile).
 */
import { FullScaleDb, type Hertz, Lufs } from '@shedbook/core';
import { createKFilter, dbToPower, gainToDb, mean, nearestQuantile, powerToLufs } from '@shedbook/signal';
import type { StereoAudio } from '../stereo.ts';
import { truePeakOf } from './true-peak.ts';

/** What there is to know of how loud a sound is. */
export interface Loudness {
  readonly integratedLufs: Lufs;
  readonly momentaryLufs: Lufs;
  readonly shortTermLufs: Lufs;
  readonly rangeLu: number;
  readonly truePeakDbtp: FullScaleDb;
}

/** One channel and how much it counts: 1 in front, 1.41 at the sides. */
export interface WeightedChannel {
  readonly samples: Float32Array;
  /** Factor of its power. */
  readonly weight: number;
}

const STEP_SECONDS = 0.1;
/** What is softer is not heard. */
export const ABSOLUTE_GATE_LUFS = -70;

/** Power of each step of so many seconds, channels summed. A last, incomplete one is left out. */
export function stepPowers(
  channels: readonly WeightedChannel[],
  rate: number,
  stepSeconds = STEP_SECONDS,
): Float64Array {
  const step = Math.round(stepSeconds * rate);
  const length = Math.min(...channels.map(({ samples }) => samples.length));
  const powers = new Float64Array(Math.floor(length / step));
  const weighted = new Float64Array(step);
  for (const { samples, weight } of channels) {
    const filter = createKFilter(rate);
    for (let k = 0; k < powers.length; k += 1) {
      filter(samples, k * step, (k + 1) * step, weighted);
      let sum = 0;
      for (let i = 0; i < step; i += 1) sum += (weighted[i] as number) ** 2;
      powers[k] = (powers[k] as number) + (weight * sum) / step;
    }
  }
  return powers;
}

/** Mean power of every run of `steps` steps. */
function runs(powers: Float64Array, steps: number): readonly number[] {
  const means: number[] = [];
  for (let k = 0; k + steps <= powers.length; k += 1) {
    let sum = 0;
    for (let i = k; i < k + steps; i += 1) sum += powers[i] as number;
    means.push(sum / steps);
  }
  return means;
}

/** Powers louder than the absolute gate, then louder than the mean of those by less than `relativeLu` below. */
function gated(powers: readonly number[], relativeLu: number): readonly number[] {
  const audible = powers.filter((power) => powerToLufs(power) > ABSOLUTE_GATE_LUFS);
  const gate = mean(audible) * dbToPower(-relativeLu);
  return audible.filter((power) => power > gate);
}

function integrated(powers: Float64Array): Lufs {
  const loud = gated(runs(powers, 4), 10);
  return Lufs(loud.length > 0 ? powerToLufs(mean(loud)) : Number.NEGATIVE_INFINITY);
}

function range(powers: Float64Array): number {
  const loud = gated(runs(powers, 30), 20);
  if (loud.length === 0) return 0;
  return powerToLufs(nearestQuantile(loud, 0.95)) - powerToLufs(nearestQuantile(loud, 0.1));
}

function highest(powers: readonly number[]): Lufs {
  return Lufs(powerToLufs(powers.reduce((most, power) => Math.max(most, power), 0)));
}

/**
 * Power of each tenth of a second of a part of a longer sound, for {@link integrateSteps}; a last, incomplete one is
 * left out. So long sounds are measured without being held whole.
 */
export function loudnessSteps(audio: StereoAudio): Float64Array {
  return stepPowers(inFront(audio), audio.sampleRateHz);
}

/** Integrated loudness, in LUFS, of parts that follow each other, from their {@link loudnessSteps}. */
export function integrateSteps(parts: readonly Float64Array[]): Lufs {
  return integrated(Float64Array.from(parts.flatMap((part) => [...part])));
}

/** Integrated loudness of stereo sound in LUFS, without the rest of {@link measureLoudness}. */
export function measureIntegrated(audio: StereoAudio): Lufs {
  return integrated(stepPowers(inFront(audio), audio.sampleRateHz));
}

/** The two channels of stereo sound. */
export function inFront(audio: StereoAudio): readonly WeightedChannel[] {
  return [audio.left, audio.right].map((samples) => ({ samples, weight: 1 }));
}

/** Loudness of any channels. */
export function measureChannels(channels: readonly WeightedChannel[], sampleRateHz: Hertz): Loudness {
  const powers = stepPowers(channels, sampleRateHz);
  const peaks = channels.map(({ samples }) => truePeakOf(samples, sampleRateHz));
  return {
    integratedLufs: integrated(powers),
    momentaryLufs: highest(runs(powers, 4)),
    shortTermLufs: highest(runs(powers, 30)),
    rangeLu: range(powers),
    truePeakDbtp: FullScaleDb(gainToDb(Math.max(0, ...peaks))),
  };
}

/** Loudness of stereo sound. */
export function measureLoudness(audio: StereoAudio): Loudness {
  return measureChannels(inFront(audio), audio.sampleRateHz);
}
