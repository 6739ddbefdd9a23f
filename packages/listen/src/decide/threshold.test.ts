import { seededRandom } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import type { Moment } from './plays.ts';
import { needOf } from './threshold.ts';

/** Forty moments with a voice and forty without, evidence half a unit around two middles. */
function momentsOf(there: number, elsewhere: number, options: { share?: number; free?: number } = {}) {
  const { share = 1, free = there } = options;
  const random = seededRandom('kit');
  const around = (middle: number) => middle + 2 * random.next() - 1;
  return Array.from({ length: 80 }, (_, i): Moment => {
    const isOwn = i % 2 === 0;
    const isPlayed = isOwn && i < 80 * share;
    const alone = around(isPlayed ? free : elsewhere);
    return { isOwn, others: 1, free: alone, early: alone, told: around(isPlayed ? there : elsewhere) };
  });
}

const needed = (...asked: Parameters<typeof momentsOf>) => needOf(momentsOf(...asked)).written;

describe('how sure the evidence must be', () => {
  it('[LI19] a voice with clear evidence needs what lies between', () => {
    // definition: halfway between 6 and −6, spreads alike
    expect(Math.abs(needed(6, -6))).toBeLessThan(0.35);
    // definition: a quarter of its places is written without it, so that they mix; 0 and −6 have −3 between them, two
    // spreads of 0.8 under 0 are −1.6, and no such voice needs less than −0.8
    expect(needed(0, -6, { share: 0.75 })).toBe(-0.8);
  });

  it('[LI19] a voice that sounds nowhere as written is not believed for being written', () => {
    // definition: evidence over 0 is struck likelier than not; what the sound alone denies must be likelier than that
    expect(needed(-5, -5)).toBeGreaterThan(1);
    // definition: only the score tells its places from the others
    expect(needed(-1, -8, { free: -8 })).toBeGreaterThan(1);
    // definition: it sounds where others are written as it does where it is
    expect(needed(1, 1)).toBeGreaterThan(1);
  });

  it('[LI19] strokes that were left out do not move it', () => {
    // definition: twelve units lie between the middles; medians hold while fewer than half are missing
    expect(Math.abs(needed(6, -6, { share: 0.7 }) - needed(6, -6))).toBeLessThan(1);
  });

  it('[LI19] a stroke that only the score sees is none where the sound alone tells the voice', () => {
    // definition: halfway between 6 and −6, spreads alike
    expect(Math.abs(needOf(momentsOf(6, -6)).alone)).toBeLessThan(0.35);
    // definition: middles one unit apart do not tell
    expect(needOf(momentsOf(1, 0)).alone).toBe(Number.NEGATIVE_INFINITY);
  });

  it('[LI63] a voice parted from the others needs what lies in the gap', () => {
    // definition: evidence within 1 of each middle leaves a gap from −3 to −1
    expect(Math.abs(needed(0, -4) + 2)).toBeLessThan(0.35);
    // definition: from −5 to −3, and no voice needs less than −1.3 that the first look is nowhere sure of
    expect(needed(-2, -6)).toBe(-1.3);
    // definition: nothing was struck where it is not written, and it is sure of the voice at half its places
    const silent = Number.NEGATIVE_INFINITY;
    const alone = momentsOf(0, -4).map((moment) =>
      moment.isOwn ? moment : { ...moment, free: silent, early: silent, told: silent },
    );
    expect(needOf(alone).written).toBe(-3);
    // definition: none needs more for it
    expect(needed(1, -3)).toBeLessThanOrEqual(0);
  });

  it('[LI7801] a voice that the sound alone keeps far from the same others needs hardly what the score adds', () => {
    // definition: from −9 to −5 nothing lies; and 3 units part the sound alone from −6, but not from −4
    expect(needed(-4, -10)).toBe(-5);
    expect(needed(-4, -8)).toBe(-1.3);
    // definition: another voice is written at the others, and nothing tells what it sounds like with this one
    const elsewhere = momentsOf(-4, -10).map((moment) => (moment.isOwn ? moment : { ...moment, others: 2 }));
    expect(needOf(elsewhere).written).toBe(-1.3);
  });

  it('[LI63] a voice that is written everywhere needs what hardly any of its strokes lies under', () => {
    const everywhere = momentsOf(1, -6).filter(({ isOwn }) => isOwn);
    const covered = everywhere.map((moment) => ({ ...moment, early: -1 }));
    // definition: three spreads of 0.8 under 1, and no lower than −0.8 where the first look is nowhere sure
    expect(needOf(covered).written).toBe(-0.8);
    expect(needOf(covered).alone).toBe(Number.NEGATIVE_INFINITY);
    // definition: where it is sure, the voice is taken to go on under others
    expect(needOf(everywhere).written).toBe(-3);
  });
});
