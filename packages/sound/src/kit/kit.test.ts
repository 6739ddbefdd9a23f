import { ACCENT_DB, GHOST_DB, Hertz } from '@shedbook/core';
import { filterInPlace, lowPass } from '@shedbook/signal';
import { describe, expect, it } from 'vitest';
import { centroidHz } from '../../test/signals.ts';
import { RATE, ring, strike, strokeLevelLufs } from '../../test/sounds.ts';
import { createKit } from './kit.ts';
import { PLAIN_STROKE_LUFS } from './measured-sound.ts';
import { SOUND_NAMES, type SoundName } from './sound.ts';

/** What a step of level may be off by. */
const STEP_TOLERANCE_DB = 0.5;
const LEVELS_DB = [-30, -24, -18, -12, -6, 0, 6, 10];

describe('every sound', () => {
  it.each(SOUND_NAMES)('[SO30] %s at 0 dB is as loud as a plain ride stroke', (name) => {
    const level = strokeLevelLufs(strike(name, 0), 0);
    // definition: SPEC.md, the level of a stroke: −23 LUFS over the first 100 ms
    expect(Math.abs(level - PLAIN_STROKE_LUFS)).toBeLessThan(0.1);
    expect(PLAIN_STROKE_LUFS).toBe(-23);
  });

  it.each(SOUND_NAMES)('[SO31] %s follows the asked level from ghost to accent within 0.5 dB', (name) => {
    for (const levelDb of [...LEVELS_DB, GHOST_DB, ACCENT_DB]) {
      const found = strokeLevelLufs(strike(name, levelDb, `level ${levelDb}`), 0);
      expect(Math.abs(found - PLAIN_STROKE_LUFS - levelDb)).toBeLessThan(STEP_TOLERANCE_DB);
    }
  });

  it.each(SOUND_NAMES)('[SO32] %s is brighter the harder it is struck', (name) => {
    // published: Fletcher and Rossing, The Physics of Musical Instruments: harder strokes shift energy upwards
    const centroids = [-18, -9, 0, 9].map((levelDb) => centroidHz(strike(name, levelDb).left, RATE));
    for (let i = 1; i < centroids.length; i += 1) {
      expect(centroids[i]).toBeGreaterThan((centroids[i - 1] as number) * 1.02);
    }
  });

  it.each(SOUND_NAMES)('[SO34] %s never sounds the same twice, and always the same from one seed', (name) => {
    const [first, again, other] = [strike(name, -3, 'a'), strike(name, -3, 'a'), strike(name, -3, 'b')];
    expect(first.left).toEqual(again.left);
    const scale = (first.left[200] as number) / (other.left[200] as number);
    const differs = first.left.some((sample, i) => Math.abs(sample - scale * (other.left[i] ?? 0)) > 1e-5);
    expect(differs).toBe(true);
  });

  it.each(SOUND_NAMES)('[SO35] %s ends in silence without a click', (name) => {
    const { left } = ring(name, 0);
    const peak = left.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
    let end = left.length - 1;
    while (left[end] === 0) end -= 1;
    expect(Math.abs(left[end] as number)).toBeLessThan(peak * 1e-4);
  });
});

/** Seconds until the energy still to come has fallen by 30 dB. */
function ringSeconds(samples: Float32Array): number {
  let rest = samples.reduce((sum, sample) => sum + sample * sample, 0);
  const goal = rest / 1000;
  for (let i = 0; i < samples.length; i += 1) {
    rest -= (samples[i] as number) ** 2;
    if (rest <= goal) return i / RATE;
  }
  return samples.length / RATE;
}

const SHORTER_WHEN_SOFT = [
  'ride',
  'hihat',
  'hihat-open',
  'hihat-foot',
  'sidestick',
  'crash',
  'click-beat',
] as const;

describe('touch', () => {
  it.each(SHORTER_WHEN_SOFT)('[SO33] a soft stroke of %s is shorter than a plain one', (name) => {
    expect(ringSeconds(ring(name, -20).left)).toBeLessThan(ringSeconds(ring(name, 0).left) * 0.97);
  });
});

/** Share of a sound's energy under a frequency, in the first 0.2 s of a plain stroke. */
function shareUnder(name: SoundName, hz: number): number {
  const { left } = strike(name, 0);
  const low = left.slice();
  for (let pass = 0; pass < 4; pass += 1) filterInPlace(low, lowPass(hz, 0.7, RATE));
  const energy = (samples: Float32Array) => samples.reduce((sum, sample) => sum + sample * sample, 0);
  return energy(low) / energy(left);
}

describe('how a limb plays', () => {
  it('[SO2100] changes the sound as it does on a drum set', () => {
    const centroidOf = (name: SoundName) => centroidHz(strike(name, 0).left, RATE);
    // published: Fletcher and Rossing, ch. 18: a longer contact excites less of what is high
    expect(centroidOf('bass-heel-down')).toBeLessThan(centroidOf('bass') * 0.9);
    // definition: near a node of the lowest modes a stroke moves them less
    expect(shareUnder('snare-edge', 260)).toBeLessThan(shareUnder('snare', 260) * 0.8);
    // common practice: the shoulder moves the metal as a whole, the tip its surface
    expect(shareUnder('hihat-shoulder', 3000)).toBeGreaterThan(shareUnder('hihat', 3000) * 1.2);
    expect(shareUnder('ride-shoulder', 3000)).toBeGreaterThan(shareUnder('ride', 3000) * 1.2);
  });
});

describe('a kit', () => {
  it('[SO36] of one seed is the same, of another seed another set', () => {
    const take = (seed: string) =>
      createKit({ sampleRateHz: Hertz(22050), seed }).sound('snare').layers[3]?.takes[0];
    expect(take('x')?.samples).toEqual(take('x')?.samples);
    expect(take('x')?.samples).not.toEqual(take('y')?.samples);
  });

  it('[SO36] makes each sound once, and ahead when asked to', () => {
    const own = createKit({ sampleRateHz: RATE });
    own.prepare(['click-beat']);
    expect(own.sound('click-beat')).toBe(own.sound('click-beat'));
  });

  it('[SO37] refuses a sample rate that cannot be meant', () => {
    expect(() => createKit({ sampleRateHz: Hertz(44.1) })).toThrow(
      'At sampleRateHz: found 44.1, expected 8000 to 192000. Is it in kilohertz?',
    );
  });
});
