/**
 * The practice log of this device.
 *
 * Conventions: one log for all lessons, each under its lasting name, so that a renewed pack finds it again.
 */
import { addEntry, EMPTY_LOG, mergeLogs, removeEntry } from '@shedbook/coach';
import type { PracticeEntry, PracticeLog } from '@shedbook/core';
import { useEffect, useState } from 'react';
import { change, read } from '../kept/database.ts';

interface KeptLog {
  readonly name: 'log';
  readonly log: PracticeLog;
}

const listeners = new Set<(log: PracticeLog) => void>();

async function update(next: (log: PracticeLog) => PracticeLog): Promise<PracticeLog> {
  const { log } = await change<KeptLog>('notes', 'log', (before) => ({
    name: 'log',
    log: next(before?.log ?? EMPTY_LOG),
  }));
  for (const listener of listeners) listener(log);
  return log;
}

/** The log as it is kept. */
export async function readLog(): Promise<PracticeLog> {
  return (await read<KeptLog>('notes', 'log'))?.log ?? EMPTY_LOG;
}

/** Keeps an entry, in place of an earlier version of itself. */
export function keepEntry(entry: PracticeEntry): Promise<PracticeLog> {
  return update((log) => {
    const others = { ...log, entries: log.entries.filter((each) => each.id !== entry.id) };
    return addEntry(others, entry);
  });
}

/** Takes an entry out for good. */
export function dropEntry(id: string): Promise<PracticeLog> {
  return update((log) => removeEntry(log, id));
}

/** Takes in everything of another log. @returns how many entries are new. */
export async function takeIn(other: PracticeLog): Promise<number> {
  const before = (await readLog()).entries.length;
  const after = await update((log) => mergeLogs(log, other));
  return Math.max(0, after.entries.length - before);
}

/** The log, as it changes; null until it was read. A browser that keeps nothing has an empty one. */
export function useLog(): PracticeLog | null {
  const [log, setLog] = useState<PracticeLog | null>(null);
  useEffect(() => {
    listeners.add(setLog);
    readLog().then(setLog, () => setLog(EMPTY_LOG));
    return () => {
      listeners.delete(setLog);
    };
  }, []);
  return log;
}
