/** What is held, in sound: it goes on evenly, is not struck again, and ends where it ends. */
import { Hertz, LeadDb, Seconds, type Voice } from '@shedbook/core';
import { expect, it } from 'vitest';
import { createKit } from '../kit/kit.ts';
import { render } from './render.ts';
import { type SoundingStroke, soundsOfStroke } from './sound-of.ts';
import { blowsOf } from './strokes-to-hits.ts';

const RATE = Hertz(22050);
const kit = createKit({ sampleRateHz: RATE });

const held = (voice: Voice, articulation: 'buzz' | 'sweep', seconds?: number): SoundingStroke => ({
  voice,
  articulation,
  mark: articulation === 'buzz' ? 'b' : 'w',
  timeSeconds: Seconds(0.1),
  levelDb: LeadDb(0),
  ...(seconds === undefined ? {} : { heldSeconds: Seconds(seconds) }),
});

/** Level of each 60 ms in dB. */
function levels(stroke: SoundingStroke, seconds: number): readonly number[] {
  const { left } = render(
    { strokes: [stroke], durationSeconds: Seconds(seconds) },
    { kit, room: false, picture: false },
  );
  const size = Math.round(0.06 * RATE);
  return Array.from({ length: Math.floor((seconds * RATE) / size) }, (_, index) => {
    const part = left.subarray(index * size, (index + 1) * size);
    return 10 * Math.log10(part.reduce((sum, sample) => sum + sample * sample, 1e-12) / size);
  });
}

const KINDS = [
  ['snare', 'buzz'],
  ['tom-low', 'buzz'],
  ['snare', 'sweep'],
] as const;

it.each(KINDS)(
  '[SO7600] a %s held by a %s goes on evenly, is not struck again, and ends with its end',
  (voice, kind) => {
    const whole = levels(held(voice, kind, 2), 3.4);
    const at = (seconds: number) => Math.floor(seconds / 0.06);
    const during = whole.slice(at(0.5), at(1.6));
    // our choice: 8 dB, a quarter of what lies between a stroke and silence in this room
    expect(Math.max(...during) - Math.min(...during)).toBeLessThan(8);
    expect(Math.max(...whole.slice(at(0.5)))).toBeLessThanOrEqual(Math.max(...whole.slice(0, at(0.5))));
    expect(Math.max(...whole.slice(at(3)))).toBeLessThan(Math.min(...during) - 15);
    // Without being held it has died by then.
    expect(levels(held(voice, kind), 2)[at(1.4)]).toBeLessThan(Math.min(...during) - 15);
  },
);

it.each(KINDS)(
  '[SO7600] nothing of a %s held by a %s sounds after its end, and its first blow is its only stroke',
  (voice, kind) => {
    for (const seconds of [0.05, 0.3, 0.7, 4]) {
      const [first, ...others] = blowsOf(held(voice, kind, seconds));
      expect(first).toEqual(blowsOf(held(voice, kind))[0]);
      expect(others.every(({ timeSeconds }) => timeSeconds > 0.1 && timeSeconds < 0.1 + seconds)).toBe(true);
      expect(others.every(({ levelDb }) => levelDb < (first?.levelDb ?? 0))).toBe(true);
    }
    expect(blowsOf(held(voice, kind, 4)).length).toBeGreaterThan(20);
  },
);

it('[SO7600] a roll needs the plain sound of its drum beside its own, a sweep its own alone', () => {
  expect(soundsOfStroke({ voice: 'snare', articulation: 'buzz', mark: 'b', held: 1 })).toEqual([
    'snare-buzz',
    'snare',
  ]);
  expect(soundsOfStroke({ voice: 'snare', articulation: 'buzz', mark: 'b' })).toEqual(['snare-buzz']);
  expect(soundsOfStroke({ voice: 'snare', articulation: 'sweep', mark: 'w', held: 1 })).toEqual([
    'snare-sweep',
  ]);
});
