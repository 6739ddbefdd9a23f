/**
 * The log as a table: one row an exercise of this lesson, with what it came to.
 *
 * Conventions: seconds; tempi in quarter notes a minute.
 */
import { exercisesOf, identityOf, isPart, type ShelfLesson } from '@shedbook/coach';
import type { PracticeEntry, PracticeLog } from '@shedbook/core';
import { FREE } from '../session/choice.ts';
import { entriesByItem } from './by-item.ts';

/** What was played of one exercise. */
export interface LogRow {
  /** Number on the sheet today, or null for the groove alone. */
  readonly number: number | null;
  readonly name: string | null;
  /** Whether it was played freely, with nothing asked for. */
  readonly isFree?: boolean;
  readonly seconds: number;
  /** Fastest tempo that the teacher passed, or null. */
  readonly passedBpm: number | null;
  /** Fastest tempo at which an ear heard a clean loop, or null. */
  readonly heardBpm: number | null;
  /** Fastest tempo that the student called clean, or null. */
  readonly saidBpm: number | null;
  /** Number of clean loops and of all loops by tempo, slowest first. */
  readonly tempi: readonly { readonly bpm: number; readonly clean: number; readonly loops: number }[];
  /** Moment of the last entry. */
  readonly last: string;
}

function temposOf(entries: readonly PracticeEntry[]): LogRow['tempi'] {
  const byBpm = new Map<number, { bpm: number; clean: number; loops: number }>();
  for (const { bpm, verdict } of entries.flatMap((entry) => entry.loops)) {
    const at = Math.round(bpm);
    const row = byBpm.get(at) ?? { bpm: at, clean: 0, loops: 0 };
    byBpm.set(at, { ...row, clean: row.clean + (verdict === 'clean' ? 1 : 0), loops: row.loops + 1 });
  }
  return [...byBpm.values()].toSorted((a, b) => a.bpm - b.bpm);
}

function fastestClean(entries: readonly PracticeEntry[], by: PracticeEntry['heardBy']): number | null {
  const loops = entries.filter(({ heardBy }) => heardBy === by).flatMap((entry) => entry.loops);
  const tempi = loops.filter(({ verdict }) => verdict === 'clean').map(({ bpm }) => Math.round(bpm));
  return tempi.length === 0 ? null : Math.max(...tempi);
}

/** The entries of whole exercises: a part of one tells nothing of its tempo. */
function wholes(entries: readonly PracticeEntry[]): readonly PracticeEntry[] {
  return entries.filter(({ form }) => !isPart(form));
}

function rowOf(entries: readonly PracticeEntry[], number: number | null, name: string | null): LogRow | null {
  const last = entries.at(-1);
  if (!last) return null;
  const tempi = temposOf(wholes(entries).filter(({ heardBy }) => heardBy !== 'teacher'));
  return {
    ...{ number, name, tempi },
    seconds: entries.reduce((sum, entry) => sum + entry.durationSeconds, 0),
    passedBpm: fastestClean(wholes(entries), 'teacher'),
    heardBpm: fastestClean(wholes(entries), 'ear'),
    saidBpm: fastestClean(wholes(entries), 'student'),
    last: last.startedAt,
  };
}

/** The rows of one lesson, in the order of its sheet, the groove alone last. */
export function logRows(log: PracticeLog, shelf: ShelfLesson): readonly LogRow[] {
  const playedOf = entriesByItem(log, identityOf([shelf]));
  const entriesOf = (key: string | null) => playedOf(shelf.id, key);
  const rows = exercisesOf([shelf]).map(({ key, exercise }) =>
    rowOf(entriesOf(key), exercise.number, exercise.name),
  );
  const alone = entriesOf(null);
  const isFree = ({ form }: PracticeEntry) => form === FREE;
  const time = rowOf(
    alone.filter((entry) => !isFree(entry)),
    null,
    null,
  );
  const free = rowOf(alone.filter(isFree), null, null);
  return [...rows, time, free && { ...free, isFree: true }].filter((row) => row !== null);
}
