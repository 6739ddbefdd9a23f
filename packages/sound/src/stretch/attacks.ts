/**
 * Where something is struck in a sound, whatever it is: for what must not be smeared or heard twice.
 *
 * Conventions: samples; an attack lies where its rise begins.
 * Source: rise of short-time energy over what came just before, a plain onset function of the kind reviewed by Bello et
 * al., IEEE Transactions on Speech and Audio Processing 13(5), 2005, section III-A.
 */
import type { Hertz } from '@shedbook/core';

const STEP_SECONDS = 0.002;
/** A step this many times as strong as the mean of those before it begins an attack. */
const RISE = 6;
const BEFORE_STEPS = 10;
/** After an attack nothing is taken for another for so long. */
const APART_SECONDS = 0.05;
/** What is softer than the loudest step by this factor of power is no attack. */
const LEAST = 1e-4;

function stepPowers(samples: Float32Array, size: number): Float64Array {
  const powers = new Float64Array(Math.floor(samples.length / size));
  for (let step = 0; step < powers.length; step += 1) {
    let sum = 0;
    // The difference from sample to sample tells a stroke from what rings low under it.
    for (let i = Math.max(1, step * size); i < (step + 1) * size; i += 1)
      sum += ((samples[i] as number) - (samples[i - 1] as number)) ** 2;
    powers[step] = sum;
  }
  return powers;
}

/** The first sample of each attack, in order. */
export function findAttacks(samples: Float32Array, rateHz: Hertz): readonly number[] {
  const size = Math.round(STEP_SECONDS * rateHz);
  const powers = stepPowers(samples, size);
  const least = LEAST * powers.reduce((most, value) => Math.max(most, value), 0);
  const attacks: number[] = [];
  let before = 0;
  for (const [step, power] of powers.entries()) {
    const mean = before / BEFORE_STEPS;
    const last = attacks.at(-1) ?? Number.NEGATIVE_INFINITY;
    if (power > least && power > RISE * mean && step * size - last > APART_SECONDS * rateHz)
      attacks.push(step * size);
    before += power - (powers[step - BEFORE_STEPS] ?? 0);
  }
  return attacks;
}
