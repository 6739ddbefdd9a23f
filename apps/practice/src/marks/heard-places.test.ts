import { meter } from '@shedbook/core';
import type { PackBar } from '@shedbook/pack';
import { LATENESS_DRAWN } from '@shedbook/playing';
import { describe, expect, it } from 'vitest';
import { displacement, FARTHEST_MM, headOn, mmPerSecond } from './heard-places.ts';

const bar: PackBar = {
  bar: 1,
  tile: 'a.svg',
  widthMm: 84,
  heightMm: 20,
  staffTopMm: 8,
  staffBottomMm: 16,
  description: '',
  slots: [
    { beat: 1, slot: 1, slots: 1, voice: 'ride', xMm: 4, yMm: 8, struck: true },
    { beat: 2, slot: 3, slots: 3, voice: 'snare', xMm: 38, yMm: 12, struck: true },
    { beat: 3, slot: 1, slots: 3, voice: 'snare', xMm: 44, yMm: 12, struck: false },
  ],
};

describe('where a heard stroke is drawn', () => {
  it('[ST77] moves a head by its lateness, to the right when late, as often as it is said', () => {
    // definition: 80 mm are four quarters, three seconds at 80: 26.7 mm a second
    const scale = mmPerSecond(bar, meter('4/4'), 80);
    expect(scale).toBeCloseTo(80 / 3, 9);
    expect(displacement(scale, 20)).toEqual({
      dxMm: expect.closeTo(LATENESS_DRAWN * 0.02 * scale, 9),
      isBeyond: false,
    });
    expect(displacement(scale, -20).dxMm).toBeCloseTo(-LATENESS_DRAWN * 0.02 * scale, 9);
    expect(displacement(scale, 0).dxMm).toBe(0);
  });

  it('[ST77] goes no farther than a head can be told from its neighbour, and says that it would have', () => {
    expect(displacement(30, 200)).toEqual({ dxMm: FARTHEST_MM, isBeyond: true });
    expect(displacement(30, -200)).toEqual({ dxMm: -FARTHEST_MM, isBeyond: true });
  });

  it('[ST77] finds the head of a written stroke, and none where nothing is written', () => {
    expect(headOn(bar, { beat: 2, slot: 3 }, 'snare')?.xMm).toBe(38);
    expect(headOn(bar, { beat: 3, slot: 1 }, 'snare')).toBeNull();
    expect(headOn(bar, { beat: 1, slot: 1 }, 'bass')).toBeNull();
  });
});
