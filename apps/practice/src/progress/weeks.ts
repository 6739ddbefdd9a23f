/**
 * Weeks of practice: which tempo held, and how even each limb was.
 *
 * Conventions: a week begins on Monday and counts from the first Monday of 1970; quarter notes a minute; evenness is
 * the spread of a voice's offsets in a round, in milliseconds, and of a week the median of its rounds.
 */
import { readMoment } from '@shedbook/coach';
import type { Lesson, Limb, PracticeEntry, Voice } from '@shedbook/core';
import { median } from '@shedbook/signal';
import type { EvenStretch } from '../log/even-store.ts';

/** A value of a week. */
export interface WeekPoint {
  readonly week: number;
  readonly value: number;
  /** Whether an ear heard it, rather than the student said it. */
  readonly isHeard: boolean;
}

/** Rounds of a week at a tempo before it can be held, and the share of them that has to be clean. */
const FEWEST_ROUNDS = 2;
const CLEAN_SHARE = 0.5;

/** 1970-01-01 was a Thursday. */
const DAYS_TO_MONDAY = 3;

/** The week of a moment, or null where it is none. */
export function weekOf(moment: string): number | null {
  const day = readMoment(moment)?.day;
  return day === undefined ? null : Math.floor((day + DAYS_TO_MONDAY) / 7);
}

/** The Monday of a week. */
export function mondayOf(week: number): Date {
  return new Date((week * 7 - DAYS_TO_MONDAY) * 86_400_000);
}

function byWeek<T extends { readonly startedAt: string }>(
  all: readonly T[],
): ReadonlyMap<number, readonly T[]> {
  const weeks = new Map<number, T[]>();
  for (const each of all) {
    const week = weekOf(each.startedAt);
    if (week !== null) weeks.set(week, [...(weeks.get(week) ?? []), each]);
  }
  return new Map([...weeks].toSorted(([a], [b]) => a - b));
}

/** The fastest tempo of some entries at which enough rounds were clean, or null. */
function heldBpm(entries: readonly PracticeEntry[]): number | null {
  const rounds = entries.flatMap(({ loops }) => loops).filter(({ verdict }) => verdict !== 'unheard');
  const tempi = [...new Set(rounds.map(({ bpm }) => Math.round(bpm)))].toSorted((a, b) => b - a);
  const held = tempi.find((tempo) => {
    const at = rounds.filter(({ bpm }) => Math.round(bpm) === tempo);
    const clean = at.filter(({ verdict }) => verdict === 'clean').length;
    return at.length >= FEWEST_ROUNDS && clean >= CLEAN_SHARE * at.length;
  });
  return held ?? null;
}

/** The tempo that held in each week: what the teacher or an ear heard, or where neither did, what the student said. */
export function tempoByWeek(entries: readonly PracticeEntry[]): readonly WeekPoint[] {
  return [...byWeek(entries)].flatMap(([week, all]): WeekPoint[] => {
    const heard = heldBpm(all.filter(({ heardBy }) => heardBy !== 'student'));
    const value = heard ?? heldBpm(all.filter(({ heardBy }) => heardBy === 'student'));
    return value === null ? [] : [{ week, value, isHeard: heard !== null }];
  });
}

/** How even a limb was in each week, in milliseconds. */
export function evennessByWeek(
  stretches: readonly EvenStretch[],
  { limbs }: Pick<Lesson, 'limbs'>,
  limb: Limb,
): readonly WeekPoint[] {
  return [...byWeek(stretches)].flatMap(([week, all]): WeekPoint[] => {
    const spreads = all.flatMap(({ spreadsMs }) =>
      (Object.keys(spreadsMs) as Voice[])
        .filter((voice) => limbs[voice] === limb)
        .flatMap((voice) => spreadsMs[voice] ?? []),
    );
    return spreads.length === 0 ? [] : [{ week, value: median(spreads), isHeard: true }];
  });
}
