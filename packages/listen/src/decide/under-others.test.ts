import { describe, expect, it } from 'vitest';
import type { Place } from './places.ts';
import { isClearAlone, isPlaying, type Moment } from './plays.ts';
import { underOthers } from './under-others.ts';

const [ALONE, BASS, SNARE] = [0, 1, 2];

interface Sounds {
  readonly free: number;
  readonly early: number;
  readonly told: number;
}

/** Moments of a hat on a kit that hides it: plain alone, shy under a drum. */
function hat(others: number, { free, early, told }: Sounds, count: number): readonly Moment[] {
  return Array.from({ length: count }, (_, index) => ({
    ...{ isOwn: true, others, free, early, told: told + 0.1 * (index % 3) },
    place: { takeBar: index } as Place,
  }));
}

const without = (others: number, told: number, free: number, count: number): readonly Moment[] =>
  Array.from({ length: count }, () => ({ isOwn: false, others, free, early: -5, told }));

const PLAIN = { free: 0.5, early: 2, told: -1.5 };
const SHY = { free: -1.2, early: -4, told: -2.8 };
const SILENT = {
  free: Number.NEGATIVE_INFINITY,
  early: Number.NEGATIVE_INFINITY,
  told: Number.NEGATIVE_INFINITY,
};

const needs = (moments: readonly Moment[], of: readonly Moment[]) => {
  const { neededAt } = underOthers(moments);
  return of.map(({ place }) => neededAt(place as Place));
};
const lostOf = (moments: readonly Moment[], heard: readonly Moment[]) =>
  underOthers(moments).lost(new Set(heard.flatMap(({ place }) => place ?? [])));

describe('a voice under others', () => {
  it('[LI5304] plays where it is clear alone, however shy it is under others; one that stays out is never clear', () => {
    const elsewhere = without(SNARE, -4.5, -2, 12);
    const plays = [...hat(ALONE, PLAIN, 8), ...hat(BASS, SHY, 40), ...elsewhere];
    expect([isClearAlone(plays), isPlaying(plays)]).toEqual([true, 'yes']);
    const out = [...hat(ALONE, SILENT, 8), ...hat(BASS, SHY, 40), ...elsewhere];
    expect(isClearAlone(out)).toBe(false);
    expect(isPlaying(out)).not.toBe('yes');
    // fewer strokes alone than four tell nothing
    expect(isClearAlone([...hat(ALONE, PLAIN, 3), ...hat(BASS, SHY, 40), ...elsewhere])).toBe(false);
  });

  it('[LI6600] a voice that is shy alone, too, plays where it stands out from what is heard where others are written', () => {
    // the closed hat of a kit that nothing was set on, in the middle: alone, and where only the snare is written
    const shy = hat(ALONE, { free: -2.6, early: -0.3, told: -1.8 }, 8);
    const elsewhere = without(SNARE, -6.1, -4.6, 12);
    const under = hat(BASS, SHY, 12);
    const plays = [...shy, ...under, ...elsewhere];
    expect([isClearAlone(plays), isPlaying(plays)]).toEqual([true, 'yes']);
    expect(needs(plays, under)[0]).toBeCloseTo(-2.7 - 1.5, 6);
    // what sounds as much like it elsewhere is no hat; nor is what the first look does not know, nor nothing at all
    expect(isClearAlone([...shy, ...under, ...without(SNARE, -6.1, -0.5, 12)])).toBe(false);
    expect(isClearAlone([...hat(ALONE, { ...SHY, free: 0 }, 8), ...under, ...elsewhere])).toBe(false);
    expect(isClearAlone([...hat(ALONE, SILENT, 8), ...under, ...elsewhere])).toBe(false);
    // too little is heard elsewhere to stand out from
    expect(isClearAlone([...shy, ...under, ...elsewhere.slice(0, 3)])).toBe(false);
  });

  it('[LI5304] needs there what its other strokes under the same drum have, and more than where it is not written', () => {
    const under = hat(BASS, SHY, 12);
    const plays = [...hat(ALONE, PLAIN, 8), ...under];
    const [least] = needs([...plays, ...without(SNARE, -6, -2, 12)], under);
    // definition: three spreads of at least 0.5 under the middle, -2.7
    expect(least).toBeCloseTo(-2.7 - 1.5, 6);
    const [over] = needs([...plays, ...without(SNARE, -3.5, -2, 12)], under);
    expect(over).toBeCloseTo(-3.5, 6);
  });

  it('[LI5304] is heard beside a drum that sounds alone, too, where both looks part the two, and else by its own need', () => {
    const under = hat(BASS, SHY, 12);
    const plays = [...hat(ALONE, PLAIN, 8), ...under];
    const [between] = needs([...plays, ...without(BASS, -5, -3, 9)], under);
    expect(between).toBeGreaterThan(-5);
    expect(between).toBeLessThan(-2.7);
    const alike = needs([...plays, ...without(BASS, -5, -1.2, 9)], under);
    expect(alike.every((need) => need === Number.POSITIVE_INFINITY)).toBe(true);
  });

  it('[LI5304] is neither heard nor missed under what mostly hides it; where most of it is heard, what is missing is missing', () => {
    const under = hat(BASS, { ...SHY, told: -6 }, 10);
    const alone = hat(ALONE, PLAIN, 8);
    const moments = [...alone, ...under];
    expect(lostOf(moments, under.slice(0, 3)).size).toBe(10);
    expect(lostOf(moments, under.slice(0, 8)).size).toBe(0);
    // alone nothing hides it, and a voice that is clear nowhere is not told by layers
    expect(lostOf([...alone], []).size).toBe(0);
    expect(lostOf([...hat(ALONE, SHY, 8), ...under], []).size).toBe(0);
  });
});
