/**
 * How each exercise stands: new, being learned, firm or shaky.
 *
 * Conventions: tempi in quarter notes a minute; days by the student's own calendar.
 */
import type { LoopRecord, PracticeEntry, PracticeLog } from '@shedbook/core';
import { isPart } from '../apart/apart.ts';
import { CLEAN_LOOPS } from '../ladder/ladder.ts';
import { loopsThatCount } from '../log/loops.ts';
import { gradeLoops } from '../spacing/grade.ts';
import { type DayEvidence, type Evidence, weighEvidence } from './evidence.ts';
import { heldBpmOf } from './held.ts';
import { identityOf, type ShelfLesson } from './identity.ts';
import { entriesByDay, exercisesOf, type ShelfExercise } from './shelf.ts';
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
  readonly loops: readonly LoopRecord[];
  readonly heardBy: 'ear' | 'student';
  /** Fastest tempo at or above which there are enough clean loops, or null. */
  readonly cleanBpm: number | null;
}

function cleanBpmOf(loops: readonly LoopRecord[]): number | null {
  const clean = loops.filter((loop) => loop.verdict === 'clean').map((loop) => loop.bpm);
  return clean.toSorted((a, b) => b - a)[CLEAN_LOOPS - 1] ?? null;
}

/** Days that were gone through before, by their first entry: a log is gone through again with every plan. */
const knownDays = new WeakMap<
  PracticeEntry,
  { readonly entries: readonly PracticeEntry[]; readonly of: Day }
>();

/** The day of some entries; parts of an exercise tell nothing of the whole and are left out. */
function dayOf(day: number, entries: readonly PracticeEntry[]): Day {
  const [first] = entries;
  const known = first && knownDays.get(first);
  if (known?.entries.length === entries.length && known.entries.every((each, i) => each === entries[i])) {
    return known.of;
  }
  const { loops, heardBy } = loopsThatCount(entries.filter((entry) => !isPart(entry.form)));
  const of: Day = { day, loops, heardBy, cleanBpm: cleanBpmOf(loops) };
  if (first) knownDays.set(first, { entries, of });
  return of;
}

/** Tempi held that were estimated before, by the last of their days. */
const knownHeld = new WeakMap<Day, { readonly days: readonly Day[]; readonly bpm: number | null }>();

/** The tempo held by the loops of the last days; estimated once for the same days. */
function heldOver(all: readonly Day[]): number | null {
  const days = all.slice(-HELD_DAYS);
  const last = days.at(-1);
  if (!last) return null;
  const known = knownHeld.get(last);
  if (known?.days.length === days.length && known.days.every((day, i) => day === days[i])) return known.bpm;
  const bpm = heldBpmOf(days.flatMap(({ loops }) => loops));
  knownHeld.set(last, { days, bpm });
  return bpm;
}

function dayEvidence({ day, loops, heardBy }: Day, goalBpm: number): readonly DayEvidence[] {
  const grade = gradeLoops(loops, { goalBpm, cleanLoops: CLEAN_LOOPS, heardBy });
  if (grade === null) return [];
  const successes = loops.filter((loop) => loop.verdict === 'clean').length;
  return [{ day, tries: loops.length, successes, grade }];
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

/** How every exercise on the shelf stands on the day `today`, in the order of the sheets. */
export function standExercises(
  shelf: readonly ShelfLesson[],
  log: PracticeLog,
  today: number,
): readonly ExerciseStanding[] {
  const items = entriesByDay(log, identityOf(shelf));
  return exercisesOf(shelf).map((each): ExerciseStanding => {
    const days = [...(items.get(each.item) ?? [])]
      .filter(([day]) => day <= today)
      .map(([day, entries]) => dayOf(day, entries))
      .filter(({ loops }) => loops.length > 0);
    const { goalBpm } = each.lesson.tempo;
    const evidence = weighEvidence(
      days.flatMap((day) => dayEvidence(day, goalBpm)),
      today,
    );
    const tempi = days.map(({ cleanBpm }) => cleanBpm);
    const cleanBpm = fastest(tempi);
    const isThere = cleanBpm !== null && cleanBpm >= goalBpm * TEMPO_SLACK;
    return {
      ...each,
      standing: standingOf(evidence, cleanBpm, goalBpm),
      evidence,
      cleanBpm,
      heldBpm: heldOver(days),
      stuckDays: isThere ? 0 : daysWithoutRise(tempi),
      sore: soreSpotOf(each.lesson, each.exercise, days.at(-1)?.loops ?? []),
    };
  });
}
