/**
 * The practice log of the student who practises now.
 *
 * Conventions: one log for all lessons, each under its lasting name, so that a renewed pack finds it again. Each entry
 * is a row of its own: writing one touches no other, and one that cannot be read is set aside as it is. What this
 * visit added is also at hand where the browser keeps nothing.
 */
import { addEntry, EMPTY_LOG, mergeLogs, removeEntry } from '@shedbook/coach';
import type { PracticeEntry, PracticeLog } from '@shedbook/core';
import { useEffect, useState } from 'react';
import { drop, keepMany, onGone, readAll } from '../kept/database.ts';
import { askToPersist } from '../kept/keeping.ts';
import { soundEntry } from './sound-entry.ts';

/** A log, and what of it could not be read, as it was found. */
export interface KeptLog {
  readonly log: PracticeLog;
  readonly unreadable: readonly Unreadable[];
}

/** Something that could not be read, and the row that it lies in. */
export interface Unreadable {
  readonly name: string;
  readonly value: unknown;
}

/** A row of the log; pages before this one kept all entries in one, named `log`. */
interface Row {
  readonly name: string;
  readonly entry?: unknown;
  readonly removed?: string;
  readonly log?: { readonly entries?: unknown; readonly removed?: unknown };
}

const entryRow = (entry: PracticeEntry): Row => ({ name: `entry ${entry.id}`, entry });
const removedRow = (id: string): Row => ({ name: `removed ${id}`, removed: id });
const rowsOf = ({ entries, removed }: PracticeLog) => [...entries.map(entryRow), ...removed.map(removedRow)];

/** What this visit added or took out, so that it is there whatever the browser does. */
let fresh: PracticeLog = EMPTY_LOG;

/** What was read last, so that a page that is opened again is whole at once. */
let latest: KeptLog | null = null;

const listeners = new Set<(log: KeptLog) => void>();

function logOf(rows: readonly Row[]): KeptLog {
  const found: Unreadable[] = rows.flatMap(({ name, entry, log }) => {
    if (entry !== undefined) return [{ name, value: entry }];
    if (log === undefined) return [];
    return Array.isArray(log.entries)
      ? log.entries.map((value: unknown) => ({ name, value }))
      : [{ name, value: log }];
  });
  const texts = (value: unknown) =>
    Array.isArray(value) ? value.filter((each) => typeof each === 'string') : [];
  const removed = rows.flatMap(({ removed, log }) => [
    ...(removed === undefined ? [] : [removed]),
    ...texts(log?.removed),
  ]);
  const entries = found.flatMap(({ value }) => soundEntry(value) ?? []);
  return {
    log: mergeLogs({ ...EMPTY_LOG, entries, removed }, EMPTY_LOG),
    unreadable: found.filter(({ value }) => soundEntry(value) === null),
  };
}

/** The log as it is kept; what this visit added where nothing can be read. */
export async function readLog(): Promise<KeptLog> {
  const { log, unreadable } = logOf(await readAll<Row>('notes').catch(() => []));
  latest = { log: mergeLogs(log, fresh), unreadable };
  return latest;
}

async function tell(): Promise<PracticeLog> {
  const kept = await readLog();
  for (const listener of listeners) listener(kept);
  return kept.log;
}

/** Keeps rows; what cannot be kept stays at hand until the page is left. */
async function write(rows: readonly Row[]): Promise<void> {
  await keepMany('notes', rows).then(
    () => void askToPersist(),
    () => undefined,
  );
}

/** Keeps an entry, in place of an earlier version of itself. */
export async function keepEntry(entry: PracticeEntry): Promise<PracticeLog> {
  const others = { ...fresh, entries: fresh.entries.filter((each) => each.id !== entry.id) };
  fresh = addEntry(others, entry);
  await write([entryRow(entry)]);
  return tell();
}

/** Takes an entry out for good. */
export async function dropEntry(id: string): Promise<PracticeLog> {
  fresh = removeEntry(fresh, id);
  await write([removedRow(id)]);
  return tell();
}

/** Takes in everything of another log. @returns how many entries are new. */
export async function takeIn(other: PracticeLog): Promise<number> {
  const before = (await readLog()).log.entries.length;
  fresh = mergeLogs(fresh, other);
  await write(rowsOf(other));
  return Math.max(0, (await tell()).entries.length - before);
}

/** Takes what cannot be read out of the way, once its student has it or wants it no more. */
export async function dropUnreadable(rows: readonly Unreadable[]): Promise<void> {
  const names = new Set(rows.map(({ name }) => name));
  for (const name of names) {
    // The one row of former pages holds sound entries too: they get rows of their own before it goes.
    if (!name.startsWith('entry ')) await write(rowsOf((await readLog()).log));
    await drop(['notes'], name);
  }
  await tell();
}

// Where the browser's data are cleared while the page is open, what this visit added is kept anew.
onGone(() => {
  void write(rowsOf(fresh)).then(tell);
});

/** Calls back whenever the log has changed. @returns what ends it */
export function onLog(listener: (log: KeptLog) => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** The log, as it changes; null until it was read once. */
export function useLog(): KeptLog | null {
  const [log, setLog] = useState(latest);
  useEffect(() => {
    void readLog().then(setLog);
    return onLog(setLog);
  }, []);
  return log;
}
