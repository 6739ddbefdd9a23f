/**
 * A student's diary: day by day what they played, what was heard and what they said themselves, what they sent and what
 * the teacher answered, for the two to read in the lesson.
 *
 * Conventions: days are the student's own, by the clock where they played; tempi as the lesson counts them; what an ear
 * heard, what the student said and what the teacher passed stand apart.
 */
import { findExercise, nameOf } from '@shedbook/coach';
import { countedTempo, type HeardBy, type PracticeEntry, type PracticeLog } from '@shedbook/core';
import type { SentTake } from '@shedbook/routes';
import type { DeskShelf } from './take-in.ts';

/** What was played of one exercise on a day, by who judged it. */
export interface DiaryPiece {
  /** What the exercise is called; null where its lesson is gone. */
  readonly exercise: string | null;
  readonly isGroove: boolean;
  readonly heardBy: HeardBy;
  /** Rounds that were judged. */
  readonly rounds: number;
  /** How many of them were clean. */
  readonly clean: number;
  /** The fastest clean round, else the fastest of all; null where nothing was played through. */
  readonly bpm: number | null;
}

/** One day. */
export interface DiaryDay {
  /** ISO 8601, without a time. */
  readonly day: string;
  readonly minutes: number;
  readonly pieces: readonly DiaryPiece[];
  readonly takes: readonly SentTake[];
}

function dayOf({ startedAt }: { readonly startedAt: string }): string {
  return startedAt.slice(0, 10);
}

function grouped<Value>(
  values: readonly Value[],
  keyOf: (value: Value) => string,
): ReadonlyMap<string, readonly Value[]> {
  const groups = new Map<string, Value[]>();
  for (const value of values) groups.set(keyOf(value), [...(groups.get(keyOf(value)) ?? []), value]);
  return groups;
}

function pieceOf(shelf: readonly DeskShelf[], entries: readonly PracticeEntry[]): DiaryPiece[] {
  const [first] = entries;
  if (!first) return [];
  const { lesson: id, exercise, heardBy } = first;
  const found = exercise === null ? null : findExercise(shelf, id, exercise);
  const lesson = found?.lesson ?? shelf.find((each) => each.id === id)?.lesson;
  const loops = entries.flatMap((entry) => entry.loops);
  const judged = loops.filter(({ verdict }) => verdict !== 'unheard');
  const clean = judged.filter(({ verdict }) => verdict === 'clean');
  const tempi = (clean.length > 0 ? clean : loops).map(({ bpm }) => bpm);
  const fastest = tempi.reduce<number | null>((most, bpm) => Math.max(most ?? bpm, bpm), null);
  const bpm = tempi.find((each) => each === fastest);
  return [
    {
      exercise: found ? nameOf(found) : exercise === null ? (lesson?.title ?? null) : null,
      isGroove: exercise === null,
      heardBy,
      rounds: judged.length,
      clean: clean.length,
      bpm: bpm === undefined ? null : lesson ? countedTempo(lesson.meter, bpm) : bpm,
    },
  ];
}

/** The days on which anything was played, passed or sent, the last first. */
export function diaryOf(
  shelf: readonly DeskShelf[],
  { entries }: PracticeLog,
  takes: readonly SentTake[],
): readonly DiaryDay[] {
  const played = grouped(entries, dayOf);
  const sent = grouped(takes, ({ facts }) => dayOf(facts));
  const days = [...new Set([...played.keys(), ...sent.keys()])].toSorted().toReversed();
  return days.map((day) => {
    const own = played.get(day) ?? [];
    const seconds = own.reduce((sum, { durationSeconds }) => sum + durationSeconds, 0);
    const pieces = grouped(own, ({ lesson, exercise, heardBy }) =>
      JSON.stringify([lesson, exercise, heardBy]),
    );
    return {
      ...{ day, minutes: Math.round(seconds / 60), takes: sent.get(day) ?? [] },
      pieces: [...pieces.values()].flatMap((piece) => pieceOf(shelf, piece)),
    };
  });
}
