/**
 * What students made of exercises, as trials that weights can be fitted to.
 *
 * Conventions: one student a log. Parts of exercises tell nothing of the whole and are left out, and so is what nobody
 * heard; the student's own word counts where there was no ear.
 */
import { type GradedPart, gradeExercise, PARTS, type PartName } from '@shedbook/composer';
import type { LoopRecord, PracticeEntry, PracticeLog } from '@shedbook/core';
import { isPart } from '../apart/apart.ts';
import { loopsThatCount } from '../log/loops.ts';
import { identityOf, type ShelfLesson } from '../mastery/identity.ts';
import { exercisesOf, type ShelfExercise } from '../mastery/shelf.ts';
import type { Trial } from './fit-weights.ts';

function countsOf(parts: readonly GradedPart[]): Readonly<Record<PartName, number>> {
  const counts = new Map(parts.map(({ part, count }) => [part, count]));
  return Object.fromEntries(PARTS.map((part) => [part, counts.get(part) ?? 0])) as Record<PartName, number>;
}

function byTempo(loops: readonly LoopRecord[]): ReadonlyMap<number, readonly LoopRecord[]> {
  const found = new Map<number, LoopRecord[]>();
  for (const loop of loops) found.set(loop.bpm, [...(found.get(loop.bpm) ?? []), loop]);
  return found;
}

function trialsOf(
  student: string,
  shelf: ShelfExercise,
  entries: readonly PracticeEntry[],
): readonly Trial[] {
  const { loops } = loopsThatCount(entries);
  const counts = countsOf(gradeExercise(shelf.lesson, shelf.exercise).parts);
  return [...byTempo(loops)].map(([bpm, at]) => ({
    student,
    exercise: shelf.item,
    counts,
    tempoShare: bpm / shelf.lesson.tempo.goalBpm,
    tries: at.length,
    clean: at.filter(({ verdict }) => verdict === 'clean').length,
  }));
}

/** Every exercise of the lessons that the logs tell of, by student and tempo. */
export function trialsIn(shelf: readonly ShelfLesson[], logs: readonly PracticeLog[]): readonly Trial[] {
  const { itemOf } = identityOf(shelf);
  const exercises = exercisesOf(shelf);
  return logs.flatMap((log, student) => {
    const whole = log.entries.filter((entry) => !isPart(entry.form));
    return exercises.flatMap((each) => {
      const entries = whole.filter((entry) => itemOf(entry.lesson, entry.exercise) === each.item);
      return trialsOf(String(student), each, entries);
    });
  });
}
