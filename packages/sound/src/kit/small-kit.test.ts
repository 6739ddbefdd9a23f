import { Hertz, LeadDb, Seconds } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { centroidHz } from '../../test/signals.ts';
import { RATE, STROKE_OF, strokeLevelLufs } from '../../test/sounds.ts';
import { render } from '../render/render.ts';
import { createSmallKit } from './small-kit.ts';
import { SOUND_NAMES, type SoundName } from './sound.ts';

const small = createSmallKit({ sampleRateHz: RATE });

function strike(name: SoundName, levelDb: number, seconds = 0.2) {
  const strokes = [{ ...STROKE_OF[name], timeSeconds: Seconds(0), levelDb: LeadDb(levelDb) }];
  const dry = { kit: small, room: false, picture: false } as const;
  return render({ strokes, durationSeconds: Seconds(seconds) }, { ...dry, tail: 'cut' });
}

describe('the small kit', () => {
  it.each(SOUND_NAMES)('[SO2710] %s is as loud as it is asked to be, and ends in silence', (name) => {
    for (const levelDb of [-18, 0, 6]) {
      // definition: SPEC.md, the level of a stroke: −23 LUFS over the first 100 ms at 0 dB
      expect(Math.abs(strokeLevelLufs(strike(name, levelDb), 0) + 23 - levelDb)).toBeLessThan(0.5);
    }
    const { left } = strike(name, 0, 1.2);
    expect(Math.abs(left.at(-1) ?? 1)).toBe(0);
  });

  it('[SO2710] tells bass drum, toms, snare and cymbals apart as the trade hears them, from dark to bright', () => {
    const order = ['bass', 'tom-low', 'tom-mid', 'tom-high', 'snare', 'ride', 'hihat'] as const;
    const heard = order.map((name) => centroidHz(strike(name, 0).left, RATE));
    // common practice: the drums of a set from low to high, metal above them
    expect(heard).toEqual(heard.toSorted((a, b) => a - b));
  });

  it('[SO2710] is little to make: all of it rings for less than a tenth of the whole kit', () => {
    const samples = SOUND_NAMES.flatMap((name) => small.sound(name).layers.flatMap(({ takes }) => takes));
    const seconds = samples.reduce((sum, take) => sum + take.samples.length, 0) / RATE;
    // by trying: the whole kit's takes last for 190 seconds at this rate
    expect(seconds).toBeLessThan(12);
    expect(() => createSmallKit({ sampleRateHz: Hertz(44) })).toThrow('sampleRateHz');
  });
});
