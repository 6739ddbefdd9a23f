import { expect, it } from 'vitest';
import { ballOn, type EngravedBar } from './on-bar.ts';

/** Two beats, 20 mm each, in a bar that ends at 45 mm. */
const BAR: EngravedBar = {
  widthMm: 45,
  slots: [
    { beat: 1, slot: 1, slots: 1, xMm: 5 },
    { beat: 2, slot: 1, slots: 1, xMm: 25 },
  ],
};

const landing = (bar: number, beat: number) => ({
  place: (bar - 1) / 2 + beat / 4,
  bar,
  patternBar: 0,
  beat,
  phase: 0,
});

it('[PL1700] flies from slot to slot, and to the end of the bar, and stands still where motion is unwanted', () => {
  const inBar = (share: number) => ballOn(BAR, { from: landing(1, 0), to: landing(1, 1), share });
  // definition: a quarter note of 20 mm; a parabola that is highest, 5.5 mm, half way
  expect([inBar(0), inBar(0.5), inBar(1)]).toEqual([
    { acrossMm: 5, overMm: 0 },
    { acrossMm: 15, overMm: 5.5 },
    { acrossMm: 25, overMm: 0 },
  ]);
  const out = { from: landing(1, 1), to: landing(2, 0), share: 0.5 };
  // definition: half way from 25 mm to the bar's end at 45 mm
  expect(ballOn(BAR, out).acrossMm).toBe(35);
  expect(ballOn(BAR, out, true)).toEqual({ acrossMm: 25, overMm: 0 });
});
