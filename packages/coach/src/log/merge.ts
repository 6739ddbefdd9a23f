/**
 * Two devices' logs as one, without loss or double counting.
 *
 * Conventions: an entry is known by its id. Where both logs have an id with different content, the entry with more
 * loops stays (a device may have exported while it was still being played). What either log took out stays out.
 * Merging is commutative, associative and idempotent.
 */
import { PRACTICE_LOG_VERSION, type PracticeEntry, type PracticeLog } from '@shedbook/core';
import { readMoment } from '../time/moment.ts';

/** A log without entries. */
export const EMPTY_LOG: PracticeLog = { version: PRACTICE_LOG_VERSION, entries: [], removed: [] };

/** One text for equal content, whatever the order of keys. */
function canonical(value: unknown): string {
  return JSON.stringify(value, (_, each: unknown) =>
    each !== null && typeof each === 'object' && !Array.isArray(each)
      ? Object.fromEntries(Object.entries(each).toSorted(([a], [b]) => compare(a, b)))
      : each,
  );
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function fuller(a: PracticeEntry, b: PracticeEntry): PracticeEntry {
  if (a === b || JSON.stringify(a) === JSON.stringify(b)) return a;
  const order = a.loops.length - b.loops.length || compare(canonical(a), canonical(b));
  return order >= 0 ? a : b;
}

function byTime(a: PracticeEntry, b: PracticeEntry): number {
  const time = (entry: PracticeEntry) => readMoment(entry.startedAt)?.instantSeconds ?? 0;
  return time(a) - time(b) || compare(a.id, b.id);
}

/** A log with entries in order of time, each id once, nothing that was taken out. */
function arrange(entries: readonly PracticeEntry[], removed: readonly string[]): PracticeLog {
  const gone = new Set(removed);
  const byId = new Map<string, PracticeEntry>();
  for (const entry of entries) {
    if (gone.has(entry.id)) continue;
    const other = byId.get(entry.id);
    byId.set(entry.id, other ? fuller(other, entry) : entry);
  }
  return {
    version: PRACTICE_LOG_VERSION,
    entries: [...byId.values()].toSorted(byTime),
    removed: [...gone].toSorted(compare),
  };
}

/** Everything that either log has. */
export function mergeLogs(a: PracticeLog, b: PracticeLog): PracticeLog {
  return arrange([...a.entries, ...b.entries], [...a.removed, ...b.removed]);
}

/** The log with one more entry, or with a fuller version of one that it has. */
export function addEntry(log: PracticeLog, entry: PracticeEntry): PracticeLog {
  return arrange([...log.entries, entry], log.removed);
}

/** The log without an entry; a later merge does not bring it back. */
export function removeEntry(log: PracticeLog, id: string): PracticeLog {
  return arrange(log.entries, [...log.removed, id]);
}
