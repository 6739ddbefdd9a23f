import { LeadDb, Seconds, VOICES } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { STROKE_OF } from '../../test/sounds.ts';
import { SOUND_NAMES, type SoundName } from '../kit/sound.ts';
import { soundOf } from './sound-of.ts';
import { blowsOf } from './strokes-to-hits.ts';

const snare = { voice: 'snare', mark: 'x', timeSeconds: Seconds(1), levelDb: LeadDb(-2) } as const;

describe('strokes', () => {
  it.each(SOUND_NAMES)('[SO23] reach the sound %s', (name) => {
    expect(soundOf(STROKE_OF[name])).toBe(name satisfies SoundName);
  });

  it.each(VOICES)('[SO23] on %s sound plain whatever else the voice does not have', (voice) => {
    expect(soundOf({ voice, articulation: 'flam', mark: 'f' })).toBe(voice);
  });

  it.each(VOICES)(
    '[SO2100] on %s sound plain however they are played where the kit has no sound of it',
    (voice) => {
      const how = ['half stroke', 'as if it were hot', 'constructor'];
      expect(soundOf({ voice, articulation: 'normal', mark: 'x', how })).toBe(voice);
      // A way of striking goes before: a buzz near the edge is a buzz.
      expect(soundOf({ voice: 'snare', articulation: 'buzz', mark: 'b', how: ['edge'] })).toBe('snare-buzz');
    },
  );

  it('[SO23] with a flam or drag have softer graces shortly before', () => {
    const flam = blowsOf({ ...snare, articulation: 'flam' });
    const drag = blowsOf({ ...snare, articulation: 'drag' });
    // common practice: one grace in a flam, two in a drag, close before the stroke
    expect([flam.length, drag.length]).toEqual([2, 3]);
    for (const blows of [flam, drag]) {
      expect(blows.at(-1)).toEqual({ sound: 'snare', timeSeconds: 1, levelDb: -2 });
      for (const grace of blows.slice(0, -1)) {
        expect(grace.levelDb).toBeLessThan(-2 - 6);
        expect(grace.timeSeconds).toBeGreaterThan(0.9);
        expect(grace.timeSeconds).toBeLessThan(0.98);
      }
    }
    expect(blowsOf({ ...snare, timeSeconds: Seconds(0.01), articulation: 'flam' }).length).toBe(1);
  });
});
