/**
 * How each exercise stands: new, being learned, firm or shaky.
 *
 * Conventions: tempi in quarter notes a minute; days by the student's own calendar.
 */
import type { LoopRecord, PracticeEntry, PracticeLog } from '@shedbook/core';
import { itemKey } from '../log/key.ts';
import { gradeLoops } from '../spacing/grade.ts';
import { type DayEvidence, type Evidence, weighEvidence } from './evidence.ts';
import { entriesByDay, exercisesOf, type ShelfExercise, type ShelfLesson } from './shelf.ts';
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
  /** What went wrong most often on the last day, or null. */
  readonly sore: SoreSpot | null;
}

/** Clean loops on one day after which a tempo counts as played clean. */
const CLEAN_LOOPS = 3;

/** From this confidence on an exercise that was clean at the goal is firm: more likely there than not. */
export const FIRM_CONFIDENCE = 0.5;

function loopsOf(entries: readonly PracticeEntry[]): readonly LoopRecord[] {
  return entries.flatMap((entry) => entry.loops).filter((loop) => loop.verdict !== 'unheard');
}

function dayEvidence(
  day: number,
  entries: readonly PracticeEntry[],
  goalBpm: number,
): readonly DayEvidence[] {
  const loops = loopsOf(entries);
  const heardBy = entries.every((entry) => entry.heardBy === 'ear') ? 'ear' : 'student';
  const grade = gradeLoops(loops, { goalBpm, cleanLoops: CLEAN_LOOPS, heardBy });
  if (grade === null) return [];
  const successes = loops.filter((loop) => loop.verdict === 'clean').length;
  return [{ day, tries: loops.length, successes, grade }];
}

/** Fastest tempo at or above which a day has enough clean loops. */
function cleanBpmOf(loops: readonly LoopRecord[]): number | null {
  const clean = loops.filter((loop) => loop.verdict === 'clean').map((loop) => loop.bpm);
  return clean.toSorted((a, b) => b - a)[CLEAN_LOOPS - 1] ?? null;
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

/** How every exercise on the shelf stands on the day `today`, in the order of the sheets. */
export function standExercises(
  shelf: readonly ShelfLesson[],
  log: PracticeLog,
  today: number,
): readonly ExerciseStanding[] {
  const items = entriesByDay(log);
  return exercisesOf(shelf).map((each): ExerciseStanding => {
    const days = [...(items.get(itemKey(each.id, each.key)) ?? [])].filter(([day]) => day <= today);
    const { goalBpm } = each.lesson.tempo;
    const evidence = weighEvidence(
      days.flatMap(([day, entries]) => dayEvidence(day, entries, goalBpm)),
      today,
    );
    const cleanBpm = fastest(days.map(([, entries]) => cleanBpmOf(loopsOf(entries))));
    const sore = soreSpotOf(each.lesson, each.exercise, loopsOf(days.at(-1)?.[1] ?? []));
    return { ...each, standing: standingOf(evidence, cleanBpm, goalBpm), evidence, cleanBpm, sore };
  });
}
