import { expect, it } from 'vitest';
import { ENERGY_BANDS } from '../detect/energy.ts';
import type { HeardEvent } from '../detect/events.ts';
import { HEARD_COUNT } from '../network/heard-voices.data.ts';
import { limbsApart } from './strokes-alone.ts';

const NOTHING = new Float32Array();

/** Something that is heard so loud, over what was before it by so much; the ear is sure of no voice. */
function event(timeSeconds: number, levelDb: number, riseDb: number): HeardEvent {
  const energyDb = new Float32Array(2 * ENERGY_BANDS).fill(levelDb).fill(levelDb - riseDb, ENERGY_BANDS);
  const presence = new Float32Array(HEARD_COUNT).fill(-4);
  return { timeSeconds, presence, offsetMs: NOTHING, levelDb: NOTHING, description: NOTHING, energyDb };
}

/** Eight strokes of each limb, a half second apart, and a rest of two seconds. */
const limb = (k: number, levelDb: number) =>
  Array.from({ length: 8 }, (_, i) => event(1 + 5.5 * k + 0.5 * i, levelDb, 25));

it('[LI8701] limbs are told apart though the rests are as noisy as by telephone', () => {
  const strokes = [limb(0, -32), limb(1, -26), limb(2, -22)].flat();
  // a hiss that lies 37 dB under the loudest limb and now and then swells
  const hiss = Array.from({ length: 60 }, (_, i) => event(0.4 + 0.37 * i, -59, 6.5)).filter(
    ({ timeSeconds }) => strokes.every((stroke) => Math.abs(stroke.timeSeconds - timeSeconds) > 0.15),
  );
  const heard = [...strokes, ...hiss].toSorted((a, b) => a.timeSeconds - b.timeSeconds);
  // truth: the first and the last stroke of each
  expect(limbsApart(heard, 3)?.map(({ fromSeconds, toSeconds }) => [fromSeconds, toSeconds])).toEqual(
    [0, 1, 2].map((k) => [expect.closeTo(0.85 + 5.5 * k, 6), expect.closeTo(4.65 + 5.5 * k, 6)]),
  );
  expect(limbsApart(heard, 5)).toBeNull();
});

it('[LI8702] music is no line check, though there is a rest in it', () => {
  // two stretches of a ride in eighths, and three seconds between
  const ride = (from: number) => Array.from({ length: 40 }, (_, i) => event(from + 0.35 * i, -20, 20));
  expect(limbsApart([...ride(1), ...ride(18)], 2)).toBeNull();
  // eight strokes of either, and hardly a rest: nobody knows where the one ends
  const near = [...limb(0, -20), ...limb(0, -20).map(({ timeSeconds }) => event(timeSeconds + 4.6, -20, 20))];
  expect(limbsApart(near, 2)).toBeNull();
});
