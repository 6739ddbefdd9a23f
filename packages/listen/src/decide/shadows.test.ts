import { seededRandom } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import type { ExpectedStroke } from '../align/form-grid.ts';
import type { HeardStroke } from './heard-stroke.ts';
import type { Place } from './places.ts';
import { shadowsOf } from './shadows.ts';

const BEAT_SECONDS = 0.5;

/** A place that a snare or a bass drum is written at. */
function placeAt(voice: 'snare' | 'bass', seconds: number): Place {
  const expected = { voice } as ExpectedStroke;
  return { expected, takeBar: 0, idealSeconds: seconds, likelySeconds: seconds };
}

interface Second {
  readonly count?: number;
  /** How late it is after the snare. */
  readonly lateMs: () => number;
  /** How loud it is against the snare. */
  readonly quieterDb: () => number;
  readonly isWritten?: boolean;
}

/** Thirty snare strokes as written, a beat apart, and a bass drum with the first `count` of them. */
function take({ count = 30, lateMs, quieterDb, isWritten = false }: Second): readonly HeardStroke[] {
  const random = seededRandom('touch');
  return Array.from({ length: 30 }, (_, i): readonly HeardStroke[] => {
    const seconds = i * BEAT_SECONDS;
    const levelDb = 6 * random.next();
    const snare = {
      voice: 'snare',
      timeSeconds: seconds,
      levelDb,
      place: placeAt('snare', seconds),
    } as const;
    const bass = {
      voice: 'bass',
      timeSeconds: seconds + lateMs() / 1000,
      levelDb: levelDb - quieterDb(),
      place: isWritten ? placeAt('bass', seconds) : null,
    } as const;
    return [snare, ...(i < count ? [bass] : [])].map((stroke) => ({ ...stroke, confidence: 0.9 }));
  })
    .flat()
    .toSorted((a, b) => a.timeSeconds - b.timeSeconds);
}

/** Values about 0 that scatter as measured ones do: twelve even ones added are nearly normal. */
function scatter(seed: string): (deviation: number) => number {
  const random = seededRandom(seed);
  return (deviation) => {
    let sum = -6;
    for (let i = 0; i < 12; i += 1) sum += random.next();
    return deviation * sum;
  };
}

const steady = { lateMs: () => 0.5, quieterDb: () => 9 };

describe('sounds with two parts', () => {
  it('[LI53] a bass drum that is half a millisecond after every snare, ever as loud, is the snare', () => {
    const strokes = take(steady);
    const found = shadowsOf(strokes);
    // definition: all of the bass drum, nothing of the snare
    expect([...found]).toEqual(strokes.filter((stroke) => stroke.voice === 'bass'));
    expect(found.size).toBe(30);
  });

  it('[LI53] so it is where times and levels scatter as a measured onset does', () => {
    const around = scatter('onsets');
    // common practice: the onset of a soft part of a sound is found to a millisecond or two, its level to a decibel
    const found = shadowsOf(take({ lateMs: () => 3 + around(1), quieterDb: () => 9 + around(1) }));
    expect(found.size).toBe(30);
  });

  it.each(['one', 'two', 'three', 'four', 'five', 'six'])(
    '[LI53] two limbs of a player are two (%s)',
    (seed) => {
      const around = scatter(seed);
      // published: taps scatter by 2 % of the interval and more, 10 ms at this beat (Repp 2005); 5 ms leaves a margin
      const found = shadowsOf(take({ lateMs: () => around(5), quieterDb: () => 9 + around(2) }));
      expect(found.size).toBe(0);
    },
  );

  it('[LI53] a few strokes show nothing', () => {
    // definition: eight at least
    expect(shadowsOf(take({ ...steady, count: 7 })).size).toBe(0);
    expect(shadowsOf(take({ ...steady, count: 8 })).size).toBe(8);
  });

  it('[LI53] what is written is a stroke, however exact', () => {
    expect(shadowsOf(take({ ...steady, isWritten: true })).size).toBe(0);
  });

  it('[LI53] a bass drum between the snares is no part of them', () => {
    expect(shadowsOf(take({ ...steady, lateMs: () => 250 })).size).toBe(0);
  });

  it('[LI3900] a voice that is as plain there as where it is written was struck, however exact', () => {
    const beside = take(steady).map((stroke) => ({ ...stroke, levelDb: 0, confidence: 0.97 }));
    const between = (levelDb: number) =>
      Array.from({ length: 12 }, (_, i): HeardStroke => {
        const seconds = (i + 0.5) * BEAT_SECONDS;
        return {
          voice: 'bass',
          timeSeconds: seconds,
          levelDb,
          place: placeAt('bass', seconds),
          confidence: 1,
        };
      });
    const inOrder = (strokes: readonly HeardStroke[]) =>
      strokes.toSorted((a, b) => a.timeSeconds - b.timeSeconds);
    expect(shadowsOf(inOrder([...beside, ...between(0)])).size).toBe(0);
    // definition: what is a part of another sound is as loud as that makes it, and not as this voice is elsewhere
    expect(shadowsOf(inOrder([...beside, ...between(6)])).size).toBe(30);
  });

  it('[LI53] nothing comes of nothing', () => {
    expect(shadowsOf([]).size).toBe(0);
  });
});
