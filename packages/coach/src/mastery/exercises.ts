/**
 * How each exercise stands: new, being learned, firm or shaky.
 *
 * Conventions: tempi in quarter notes a minute; days by the student's own calendar.
 */
import { groupBy, type HeardBy, type LoopRecord, type PracticeEntry, type PracticeLog } from '@shedbook/core';
import { isPart } from '../apart/apart.ts';
import { CLEAN_LOOPS } from '../ladder/ladder.ts';
import { loopsThatCount } from '../log/loops.ts';
import { gradeLoops } from '../spacing/grade.ts';
import { momentOf } from '../time/moment.ts';
import { type DayEvidence, type Evidence, weighEvidence } from './evidence.ts';
import { heldBpmOf } from './held.ts';
import { identityOf, type ShelfLesson } from './identity.ts';
import { entriesByItem, exercisesOf, type ShelfExercise } from './shelf.ts';
import { type SoreSpot, soreSpotOf } from './sore.ts';

/** `new`: never heard; `learning`: on its way; `firm`: there at the goal; `shaky`: needs work again. */
export type Standing = 'new' | 'learning' | 'firm' | 'shaky';

/** How one exercise stands. */
export interface ExerciseStanding extends ShelfExercise {
  readonly standing: Standing;
  /** Null when it was never heard. */
  readonly evidence: Evidence | null;
  /** Fastest tempo with enough clean loops on one day, or null. */
  readonly cleanBpm: number | null;
  /** Tempo at which half of the loops would be clean, from the last days, or null. */
  readonly heldBpm: number | null;
  /** Practice days since the tempo of clean loops last rose; 0 at the goal. */
  readonly stuckDays: number;
  /** What went wrong most often on the last day, or null. */
  readonly sore: SoreSpot | null;
}

/** Practice days that the tempo held is estimated from: a visit is some ten loops, too few to tell a tempo by. */
const HELD_DAYS = 4;

/** From this confidence on an exercise that was clean at the goal is firm: more likely there than not. */
export const FIRM_CONFIDENCE = 0.5;

/** What a day with the whole of an exercise came to. */
interface Day {
  readonly day: number;
  readonly entries: readonly PracticeEntry[];
  readonly loops: readonly LoopRecord[];
  readonly heardBy: HeardBy;
  /** Fastest tempo at or above which there are enough clean loops, or null. */
  readonly cleanBpm: number | null;
}

/** What the entries of an exercise come to, whatever day it is. */
interface History {
  readonly entries: readonly PracticeEntry[];
  readonly goalBpm: number;
  readonly days: readonly Day[];
  readonly evidence: readonly DayEvidence[];
  readonly cleanBpm: number | null;
  readonly heldBpm: number | null;
  readonly stuckDays: number;
}

function cleanBpmOf(loops: readonly LoopRecord[]): number | null {
  const clean = loops.filter((loop) => loop.verdict === 'clean').map((loop) => loop.bpm);
  return clean.toSorted((a, b) => b - a)[CLEAN_LOOPS - 1] ?? null;
}

function isSame(a: readonly PracticeEntry[], b: readonly PracticeEntry[]): boolean {
  return a.length === b.length && a.every((entry, index) => entry === b[index]);
}

/** Days that were gone through before, by their first entry: a log is gone through again with every plan. */
const knownDays = new WeakMap<PracticeEntry, Day>();

/** The day of some entries; parts of an exercise tell nothing of the whole and are left out. */
function dayOf(day: number, entries: readonly PracticeEntry[]): Day {
  const [first] = entries;
  const known = first && knownDays.get(first);
  if (known && isSame(known.entries, entries)) return known;
  const { loops, heardBy } = loopsThatCount(entries.filter((entry) => !isPart(entry.form)));
  const of: Day = { day, entries, loops, heardBy, cleanBpm: cleanBpmOf(loops) };
  if (first) knownDays.set(first, of);
  return of;
}

/** What a day tells, made once for each day: spacing goes on from there. */
const knownEvidence = new WeakMap<Day, { readonly goalBpm: number; readonly of: readonly DayEvidence[] }>();

function dayEvidence(day: Day, goalBpm: number): readonly DayEvidence[] {
  const known = knownEvidence.get(day);
  if (known?.goalBpm === goalBpm) return known.of;
  const { loops, heardBy } = day;
  const grade = gradeLoops(loops, { goalBpm, cleanLoops: CLEAN_LOOPS, heardBy });
  const successes = loops.filter((loop) => loop.verdict === 'clean').length;
  const of = grade === null ? [] : [{ day: day.day, tries: loops.length, successes, grade }];
  knownEvidence.set(day, { goalBpm, of });
  return of;
}

function fastest(tempi: readonly (number | null)[]): number | null {
  const known = tempi.filter((bpm) => bpm !== null);
  return known.length === 0 ? null : Math.max(...known);
}

/** A played tempo wanders by a few percent; this much below the goal is still the goal. */
const TEMPO_SLACK = 0.97;

function standingOf(evidence: Evidence | null, cleanBpm: number | null, goalBpm: number): Standing {
  if (!evidence) return 'new';
  const wasThere = cleanBpm !== null && cleanBpm >= goalBpm * TEMPO_SLACK;
  if (wasThere && evidence.confidence >= FIRM_CONFIDENCE) return 'firm';
  const wentBadly = evidence.lastGrade === 'again' || evidence.lastGrade === 'hard';
  return wentBadly || wasThere ? 'shaky' : 'learning';
}

/** Practice days since the fastest clean tempo last rose. */
function daysWithoutRise(tempi: readonly (number | null)[]): number {
  let best = Number.NEGATIVE_INFINITY;
  let days = 0;
  for (const bpm of tempi) {
    days = bpm !== null && bpm > best ? 0 : days + 1;
    best = Math.max(best, bpm ?? best);
  }
  return days;
}

/** Histories that were gone through before, by their last entry. */
const knownHistories = new WeakMap<PracticeEntry, History>();

function historyOf(entries: readonly PracticeEntry[], goalBpm: number): History {
  const last = entries.at(-1);
  const known = last && knownHistories.get(last);
  if (known?.goalBpm === goalBpm && isSame(known.entries, entries)) return known;
  const days = [...groupBy(entries, ({ startedAt }) => momentOf(startedAt).day)]
    .toSorted(([a], [b]) => a - b)
    .map(([day, own]) => dayOf(day, own))
    .filter(({ loops }) => loops.length > 0);
  const tempi = days.map(({ cleanBpm }) => cleanBpm);
  const cleanBpm = fastest(tempi);
  const decided = days.findLastIndex(({ heardBy }) => heardBy === 'teacher');
  const isThere = cleanBpm !== null && cleanBpm >= goalBpm * TEMPO_SLACK;
  const history: History = {
    ...{ entries, goalBpm, days, cleanBpm },
    // What the teacher said stands above what was known before.
    evidence: days.slice(Math.max(0, decided)).flatMap((day) => dayEvidence(day, goalBpm)),
    heldBpm: heldBpmOf(days.slice(-HELD_DAYS).flatMap(({ loops }) => loops)),
    stuckDays: isThere ? 0 : daysWithoutRise(tempi),
  };
  if (last) knownHistories.set(last, history);
  return history;
}

/** How every exercise on the shelf stands on the day `today`, in the order of the sheets. */
export function standExercises(
  shelf: readonly ShelfLesson[],
  log: PracticeLog,
  today: number,
): readonly ExerciseStanding[] {
  const items = entriesByItem(log, identityOf(shelf), today);
  return exercisesOf(shelf).map((each): ExerciseStanding => {
    const { goalBpm } = each.lesson.tempo;
    const history = historyOf(items.get(each.item) ?? [], goalBpm);
    const { cleanBpm, heldBpm, stuckDays } = history;
    const evidence = weighEvidence(history.evidence, today);
    return {
      ...each,
      standing: standingOf(evidence, cleanBpm, goalBpm),
      ...{ evidence, cleanBpm, heldBpm, stuckDays },
      sore: soreSpotOf(each.lesson, each.exercise, history.days.at(-1)?.loops ?? []),
    };
  });
}
