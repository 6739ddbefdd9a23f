import { seededRandom } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import {
  doubtOf,
  isParted,
  isPlaying,
  isWhole,
  likelyPlaying,
  type Moment,
  shareHigher,
  shareThere,
} from './plays.ts';

const random = seededRandom('limbs');

/** Moments of a bar of four, again and again: the voice is written on 2 and 4, a loud other voice on all four. */
function bars(count: number, evidence: (beat: number) => number): readonly Moment[] {
  return Array.from({ length: 4 * count }, (_, i): Moment => {
    const value = evidence(i % 4) + random.next() - 0.5;
    return { isOwn: i % 2 === 1, others: i % 2 === 1 ? 3 : 1, free: value, early: value, told: value };
  });
}

describe('whether a limb plays at all', () => {
  it('[LI57] counts the pairs in which the first is higher, ties half', () => {
    // definition: of the four pairs (3, 2), (3, 4), (2, 2), (2, 4) one is higher and one tied
    expect(shareHigher([3, 2], [2, 4])).toBe(1.5 / 4);
    // definition: none at all
    expect(shareHigher([], [1])).toBeNaN();
  });

  it('[LI57] compares moments with the same other voices too', () => {
    const alike = bars(20, (beat) => (beat % 2 === 1 ? 6 : 0)).map((moment) => ({ ...moment, others: 1 }));
    // definition: every written moment is over every other one
    expect(shareThere(alike)).toBe(1);
    const byOther = Array.from({ length: 80 }, (_, i): Moment => {
      const others = i % 4 === 0 ? 0 : 1;
      const value = others === 1 ? 3 : 0;
      return { isOwn: i % 4 === 1, others, free: value, early: value, told: value };
    });
    // definition: 20 written moments with the other voice are as 40 of the 60, over 20; among those with it, all tied
    expect(shareThere(byOther)).toBeCloseTo(((20 + 40 / 2) / 60 + 1 / 2) / 2, 12);
  });

  it('[LI57] believes a limb that sounds like itself where it is written, however shyly, and no other', () => {
    // definition: one unit of evidence apart with a spread of a third; no evidence over 0
    expect(isPlaying(bars(20, (beat) => (beat % 2 === 1 ? -2 : -3)))).toBe('yes');
    // definition: the same everywhere
    expect(isPlaying(bars(20, () => -1))).toBe('no');
    // definition: heard for sure at its places, though something sounds like it at the others
    expect(isPlaying(bars(20, () => 4))).toBe('yes');
  });

  it('[LI57] doubts a limb of few places, and takes one that is written everywhere by its own sound', () => {
    const few = bars(20, (beat) => (beat % 2 === 1 ? 3 : -3)).map((moment, i) => ({
      ...moment,
      isOwn: moment.isOwn && i < 4,
    }));
    expect(isPlaying(few)).toBe('perhaps');
    const everywhere = (value: number) => bars(20, () => value).map((each) => ({ ...each, isOwn: true }));
    expect(isPlaying(everywhere(1))).toBe('yes');
    expect(isPlaying(everywhere(-4))).toBe('no');
    expect(isPlaying([])).toBe('no');
  });

  it('[LI8500] calls a shy hand that is written everywhere whole where hardly a stroke of it is missing', () => {
    const everywhere = (value: number) => bars(20, () => value).map((each) => ({ ...each, isOwn: true }));
    // definition: two of eighty are hardly any, every other one is half; a limb that nobody hears does not play
    expect(isWhole(everywhere(-1), 2)).toBe(true);
    expect(isWhole(everywhere(-1), 40)).toBe(false);
    expect(isWhole(everywhere(-8), 2)).toBe(false);
    // definition: of a voice that is written at half of the moments the others tell
    expect(
      isWhole(
        bars(20, () => -1),
        0,
      ),
    ).toBe(false);
  });

  it('[LI1100] does not take a limb for playing where the least of differences parts the first look and none hears it', () => {
    const same = bars(20, () => -6).map((moment) => ({ ...moment, early: moment.isOwn ? -5.9 : -6 }));
    // definition: the first look is higher at each of 40 places than at any of 40 others, by a tenth of a logit; the second
    // is at random, and both are as sure as can be that nothing was struck
    expect(isParted(same)).toBe(false);
    expect(isPlaying(same)).toBe('no');
  });

  it('[LI1101] asks the more of a limb the less likely it plays, and nothing of one that does', () => {
    const plain = bars(20, (beat) => (beat % 2 === 1 ? 0.3 : 0));
    const shares = (by: number) =>
      plain.map((moment) => ({ ...moment, free: moment.free + by, early: moment.early + by }));
    // definition: what is lacking grows by as much as the likelihood falls
    const lacking = (by: number) => doubtOf(shares(by)) + likelyPlaying(shares(by));
    expect(lacking(-2)).toBeCloseTo(lacking(-3), 9);
    expect(doubtOf(shares(-3))).toBeGreaterThan(doubtOf(shares(-2)));
    expect(doubtOf(shares(4))).toBe(Number.NEGATIVE_INFINITY);
    // definition: eight places tell too little to doubt
    expect(doubtOf(shares(-3).filter((moment, i) => !moment.isOwn || i < 16))).toBe(Number.NEGATIVE_INFINITY);
  });

  it('[LI1102] wants an accent of few places to be clear at one of them at least', () => {
    const few = bars(20, () => -2).filter((moment, i) => !moment.isOwn || i < 8);
    expect(isPlaying(few)).toBe('perhaps');
    expect(isPlaying(few, true)).toBe('no');
    // definition: one place of four is clear
    const once = few.map((moment, i) => (i === 1 ? { ...moment, free: 1 } : moment));
    expect(isPlaying(once, true)).toBe('perhaps');
  });

  it('[LI1100] weighs what a limb sounds like there with how far it is parted', () => {
    const heard = bars(20, (beat) => (beat % 2 === 1 ? 1 : 0.7));
    const shier = heard.map((moment) => ({ ...moment, free: moment.free - 3, early: moment.early - 3 }));
    // definition: the same shares, three logits lower everywhere
    expect(shareThere(shier)).toBe(shareThere(heard));
    expect(likelyPlaying(heard)).toBeGreaterThan(likelyPlaying(shier) + 1);
  });

  it('[LI57] takes the first look for it where the second is shy, if it parts the places clearly', () => {
    const shy = bars(20, () => -5).map((moment) => ({ ...moment, early: moment.isOwn ? -2 : -3 }));
    // definition: the first look is higher at each of 40 places than at any of 40 others, the second at random
    expect(isParted(shy)).toBe(true);
    expect(isPlaying(shy)).toBe('yes');
    // definition: the same of eight places only
    expect(isParted(shy.filter((moment, i) => !moment.isOwn || i < 16))).toBe(false);
    expect(isParted(bars(20, () => -5))).toBe(false);
  });

  it('[LI57] [LI1104] believes a limb of few places if both looks part them clearly', () => {
    const clear = bars(20, (beat) => (beat % 2 === 1 ? -2 : -4));
    const ofFirst = (count: number, moments = clear) =>
      moments.filter((moment, i) => !moment.isOwn || i < 2 * count);
    // definition: each look is higher at each of 8 places than at any of 40 others
    expect(isPlaying(ofFirst(8))).toBe('yes');
    // [LI1104] definition: at each of four too; two places tell too little, and four of which nobody hears one
    expect(isPlaying(ofFirst(4))).toBe('yes');
    expect(isPlaying(ofFirst(2))).toBe('perhaps');
    const unheard = clear.map((moment) => ({ ...moment, free: moment.free - 4, early: moment.early - 4 }));
    expect(isPlaying(ofFirst(4, unheard))).toBe('perhaps');
  });

  it('[LI57] takes the second look for it where it is written everywhere and the first is shy', () => {
    const everywhere = bars(20, () => 1).map((moment) => ({ ...moment, isOwn: true, early: -3 }));
    expect(isPlaying(everywhere)).toBe('yes');
    // definition: neither look finds it
    expect(isPlaying(everywhere.map((moment) => ({ ...moment, free: -1 })))).toBe('no');
  });

  it('[LI57] hears a voice that is written everywhere where nothing else is', () => {
    // definition: covered at 72 moments of 80, sure at the 8 that are its own
    const covered = bars(20, () => -4).map((moment, i) =>
      i % 10 === 0 ? { ...moment, isOwn: true, others: 0, early: 3 } : { ...moment, isOwn: true },
    );
    expect(isPlaying(covered)).toBe('yes');
    // definition: nothing is struck at those
    const none = { early: Number.NEGATIVE_INFINITY, free: Number.NEGATIVE_INFINITY };
    const silent = covered.map((moment) => (moment.others === 0 ? { ...moment, ...none } : moment));
    expect(isPlaying(silent)).toBe('no');
  });
});
