import { seededRandom, type Voice } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import type { HeardStroke } from '../decide/heard-stroke.ts';
import { ENERGY_BANDS } from '../detect/energy.ts';
import type { HeardEvent } from '../detect/events.ts';
import { measureLevels } from './voice-levels.ts';

const nothing = new Float32Array();
const bands = (of: (band: number) => number) => Float64Array.from({ length: ENERGY_BANDS }, (_, b) => of(b));
/** Spectra of power that overlap: a drum, a cymbal, a foot that closes another one. */
const SPECTRA: Partial<Record<Voice, Float64Array>> = {
  bass: bands((b) => (b < 4 ? 1 : 0)),
  ride: bands((b) => 0.1 + b),
  'hihat-foot': bands((b) => 0.5 + 12 * Math.exp(-((b - 6) ** 2) / 6)),
};
const LEVELS_DB = { ride: -30, bass: -41, 'hihat-foot': -37 } as const;
type Struck = keyof typeof LEVELS_DB;

/** Moments of what was struck, each stroke up to 1.5 dB louder or softer; the guess is the same for all. */
function take(moments: readonly (readonly Struck[])[], options: { top?: number } = {}) {
  const random = seededRandom('levels');
  const strokes: HeardStroke[] = [];
  const events = moments.map((struck, i): HeardEvent => {
    const power = bands(() => 1e-9);
    for (const voice of struck) {
      const spectrum = SPECTRA[voice]!;
      const whole = spectrum.reduce((a, b) => a + b, 0);
      const gain = 10 ** ((LEVELS_DB[voice] + 3 * (random.next() - 0.5)) / 10) / whole;
      for (let b = 0; b < ENERGY_BANDS; b += 1)
        power[b]! += gain * spectrum[b]! * (b === ENERGY_BANDS - 1 ? (options.top ?? 1) : 1);
      strokes.push({ voice, timeSeconds: i / 4, levelDb: -20, place: null, confidence: 1 });
    }
    const energyDb = new Float32Array(2 * ENERGY_BANDS).fill(-120);
    power.forEach((value, b) => {
      energyDb[b] = 10 * Math.log10(value);
    });
    return {
      timeSeconds: i / 4,
      presence: nothing,
      offsetMs: nothing,
      levelDb: nothing,
      description: nothing,
      energyDb,
    };
  });
  return { events, strokes };
}

const SWING: readonly (readonly Struck[])[] = Array.from({ length: 96 }, (_, i): Struck[] => {
  if (i % 3 === 2) return ['ride'];
  return i % 6 === 3 ? ['ride', 'bass', 'hihat-foot'] : ['ride', 'bass'];
});

const levelOf = (strokes: readonly HeardStroke[], voice: Voice) =>
  strokes.find((stroke) => stroke.voice === voice)!.levelDb;

describe('the level of each voice', () => {
  it('[LI52] is told from moments in which voices are struck together', () => {
    const { events, strokes } = take(SWING);
    const measured = measureLevels(events, strokes);
    // definition: the levels that the moments were made with
    for (const [voice, db] of Object.entries(LEVELS_DB))
      expect(Math.abs(levelOf(measured, voice as Voice) - db), voice).toBeLessThan(1.5);
  });

  it('[LI4403] lies in the middle of accents and ghost notes in decibels, by the strokes that sound alone', () => {
    const loud = (i: number) => (i % 2 === 0 ? 6 : -6);
    const { events, strokes } = take(Array.from({ length: 32 }, (): Struck[] => ['ride']));
    const touched = events.map((event, i) => ({
      ...event,
      energyDb: event.energyDb.map((db) => db + loud(i)),
    }));
    const guessed = strokes.map((stroke, i) => ({ ...stroke, levelDb: stroke.levelDb + loud(i) }));
    const measured = measureLevels(touched, guessed);
    // definition: as loud as made, 6 dB over it and under it by turns; strokes scatter by 1.5 dB
    const apart = measured.map(({ levelDb }, i) => Math.abs(levelDb - loud(i) - LEVELS_DB.ride));
    expect(Math.max(...apart)).toBeLessThan(1);
  });

  it('[LI52] is left half to the guess where a recording has lost its highs', () => {
    const { events, strokes } = take(SWING, { top: 0.001 });
    const measured = measureLevels(events, strokes);
    const whole = LEVELS_DB.bass - -20;
    expect(Math.abs(levelOf(measured, 'bass') + 20 - whole / 2)).toBeLessThan(0.8);
  });

  it('[LI52] is the guess where nothing was measured or too little was struck', () => {
    const { events, strokes } = take(SWING);
    const unmeasured = events.map((event) => ({ ...event, energyDb: nothing }));
    expect(measureLevels(unmeasured, strokes)).toEqual(strokes);
    const few = take(SWING.slice(0, 2));
    expect(measureLevels(few.events, few.strokes)).toEqual(few.strokes);
  });
});
