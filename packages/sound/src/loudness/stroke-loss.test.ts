import { Hertz, seededRandom } from '@shedbook/core';
import { dbToGain } from '@shedbook/signal';
import { expect, it } from 'vitest';
import { both } from '../../test/signals.ts';
import { mostLoss, strokeSteps } from './stroke-loss.ts';

const RATE = Hertz(48_000);

/** Strokes of noise at their moments (seconds), in dB, each dying away within a tenth of a second. */
function strokes(all: readonly (readonly [seconds: number, levelDb: number])[]) {
  const samples = new Float32Array(2 * RATE);
  for (const [seconds, levelDb] of all) {
    const random = seededRandom(`stroke ${seconds}`);
    const at = seconds * RATE;
    for (let i = 0; i < 0.1 * RATE; i += 1)
      samples[at + i] =
        (samples[at + i] as number) + dbToGain(levelDb) * Math.exp(-i / 960) * (random.next() - 0.5);
  }
  return strokeSteps(both(samples, RATE));
}

it('[SO7200] tells what the stroke that lost most has lost, whatever gain the whole was given', () => {
  const before = strokes([
    [0.2, -20],
    [0.6, 0],
    [1.2, -6],
  ]);
  // definition: 3 dB off the loud one and 1 dB off another, all of it 5 dB louder
  const after = strokes([
    [0.2, -15],
    [0.6, 2],
    [1.2, -2],
  ]);
  expect(mostLoss(before, after, 5)).toBeCloseTo(3, 2);
  expect(mostLoss(before, before, 0)).toBe(0);
  expect(mostLoss(strokes([]), strokes([]), 5)).toBe(0);
});

it('[SO7200] does not take a soft stroke 60 ms before a loud one for the loud one', () => {
  const [before, after] = [0, -3].map((loud) =>
    strokes([
      [0.2, -20],
      [0.26, loud],
    ]),
  );
  if (!before || !after) throw new Error('no strokes');
  expect(mostLoss(before, after, 0)).toBeCloseTo(3, 1);
  // only the loudest moment of the loud one is turned down, which is all that falls into the soft one's window
  const peak = after.map((power, step) => (step === 26 ? power : (before[step] as number)));
  const own = [before, peak].map((steps) => steps.slice(25, 35).reduce((sum, power) => sum + power, 0));
  expect(mostLoss(before, peak, 0)).toBeCloseTo(10 * Math.log10((own[0] as number) / (own[1] as number)), 6);
});
