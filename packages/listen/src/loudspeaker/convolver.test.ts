import { seededRandom } from '@shedbook/core';
import { expect, it } from 'vitest';
import { CONVOLVE_BLOCK, Convolver, FAR_BLOCK } from './convolver.ts';

/** Rounding of some thousand products of numbers of about 1. */
const ROUNDING = 1e-9;

const LENGTH = 3 * FAR_BLOCK;
const { next } = seededRandom('filter');
const noise = (length: number) => Float32Array.from({ length }, () => next() - 0.5);

/** definition: y(n) = Σ h(k)·x(n − k) */
function convolved(filter: Float64Array, sound: Float32Array, n: number): number {
  let sum = 0;
  for (let k = 0; k <= Math.min(n, filter.length - 1); k += 1) sum += filter[k]! * sound[n - k]!;
  return sum;
}

function through(convolver: Convolver, sound: Float32Array): readonly number[] {
  const heard: number[] = [];
  for (let at = 0; at < sound.length; at += CONVOLVE_BLOCK)
    heard.push(...convolver.push(sound.subarray(at, at + CONVOLVE_BLOCK)));
  return heard;
}

it('[LI2601] gives every sample of the filtered sound at once, by the definition, with another filter from where it comes', () => {
  const [first, second] = [Float64Array.from(noise(LENGTH)), Float64Array.from(noise(LENGTH))];
  const sound = noise(6 * FAR_BLOCK);
  const half = 3 * FAR_BLOCK;
  const convolver = new Convolver(LENGTH);
  convolver.set(first);
  const heard = [...through(convolver, sound.subarray(0, half))];
  convolver.set(second);
  heard.push(...through(convolver, sound.subarray(half)));
  expect(heard).toHaveLength(sound.length);
  const farthest = heard.reduce(
    (most, value, n) => Math.max(most, Math.abs(value - convolved(n < half ? first : second, sound, n))),
    0,
  );
  expect(farthest).toBeLessThan(ROUNDING);
});
