/**
 * A student's practice as it is kept: rows, each read by itself, so that one that cannot be read costs itself alone.
 *
 * Conventions: an entry each, or what was taken out; rows without a version are whole logs that an earlier desk could
 * not take apart.
 */
import { jsonIn, PRACTICE_LOG_VERSION, type PracticeEntry, type PracticeLog } from '@shedbook/core';
import { momentOf } from '../time/moment.ts';
import { itemKey } from './key.ts';
import { EMPTY_LOG, mergeLogs } from './merge.ts';
import { parsePracticeLog, readPracticeEntry } from './read-log.ts';

/** What an entry calls its device that a take itself brought. */
export const TAKE_DEVICE = 'take';

/** A row as it is kept. */
export interface LogRowText {
  /** Version of the log that it came from; 0 where none was said. */
  readonly version: number;
  /** JSON, where it can be read. */
  readonly text: string;
  /** Whether it is still as it was written. */
  readonly isSound: boolean;
}

/** What a row adds to the log; null where it cannot be read. */
export function logOfRow({ version, text, isSound }: LogRowText): PracticeLog | null {
  if (!isSound) return null;
  if (version === 0) return parsePracticeLog(text, 'log').soundEntries;
  if (version !== PRACTICE_LOG_VERSION) return null;
  const value = jsonIn(text);
  const { removed } = (value ?? {}) as { readonly removed?: unknown };
  if (typeof removed === 'string') return { ...EMPTY_LOG, removed: [removed] };
  const entry = readPracticeEntry(value);
  return entry && { ...EMPTY_LOG, entries: [entry] };
}

function isWithin(take: PracticeEntry, other: PracticeEntry): boolean {
  const start = momentOf(take.startedAt).instantSeconds;
  const from = momentOf(other.startedAt).instantSeconds;
  const sameThing = itemKey(take.lesson, take.exercise) === itemKey(other.lesson, other.exercise);
  return sameThing && start < from + other.durationSeconds && from < start + take.durationSeconds;
}

/** The log without takes of practice that it has anyway: while a take was made, the practice room kept its log. */
export function withoutDoubles(log: PracticeLog): PracticeLog {
  const others = log.entries.filter((entry) => entry.device !== TAKE_DEVICE);
  const entries = log.entries.filter(
    (entry) => entry.device !== TAKE_DEVICE || !others.some((other) => isWithin(entry, other)),
  );
  return { ...log, entries };
}

/** The log that rows make together, whatever their order; what cannot be read counts for nothing. */
export function logOfRows(rows: readonly LogRowText[]): PracticeLog {
  const logs = rows.flatMap((row) => logOfRow(row) ?? []);
  const entries = logs.flatMap((log) => log.entries);
  const removed = logs.flatMap((log) => log.removed);
  return withoutDoubles(mergeLogs({ ...EMPTY_LOG, entries, removed }, EMPTY_LOG));
}
