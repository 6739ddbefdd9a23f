/**
 * The practice log of the student who practises now.
 *
 * Conventions: one log for all lessons, each under its lasting name, so that a renewed pack finds it again. Each entry
 * is a row of its own: writing one touches no other, and one that cannot be read is set aside as it is. What this
 * visit added is also at hand where the browser keeps nothing. A year of practice takes a second to read, so that it is
 * read once, in pieces, and anew only where another page of this host wrote something or the browser lost it.
 */
import { addEntry, EMPTY_LOG, mergeLogs, removeEntry } from '@shedbook/coach';
import type { PracticeEntry, PracticeLog } from '@shedbook/core';
import { useEffect, useState } from 'react';
import { drop, keepMany, onGone, read, readPieces } from '../kept/database.ts';
import { askToPersist } from '../kept/keeping.ts';
import { ownName } from '../kept/students.ts';
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

const entryName = (id: string) => `entry ${id}`;
const entryRow = (entry: PracticeEntry): Row => ({ name: entryName(entry.id), entry });
const removedRow = (id: string): Row => ({ name: `removed ${id}`, removed: id });
const rowsOf = ({ entries, removed }: PracticeLog) => [...entries.map(entryRow), ...removed.map(removedRow)];

/** What this visit added or took out, so that it is there whatever the browser does. */
let fresh: PracticeLog = EMPTY_LOG;

/** What was read last, with what this visit added since. */
let latest: KeptLog | null = null;

/** Whether what is kept is no longer what was read. */
let isStale = false;

/** A reading that is on its way. */
let reading: Promise<KeptLog> | null = null;

const listeners = new Set<(log: KeptLog) => void>();

let others: BroadcastChannel | null = null;

/** Other pages of this host, on which the same student may practise. */
function otherPages(): BroadcastChannel {
  if (others) return others;
  others = new BroadcastChannel(ownName('shedbook-practice'));
  others.onmessage = () => {
    isStale = true;
  };
  return others;
}

/** Values of rows that may be entries, each with the row that it lies in. */
function valuesIn({ name, entry, log }: Row): readonly Unreadable[] {
  if (entry !== undefined) return [{ name, value: entry }];
  if (log === undefined) return [];
  return Array.isArray(log.entries)
    ? log.entries.map((value: unknown) => ({ name, value }))
    : [{ name, value: log }];
}

function removedIn({ removed, log }: Row): readonly string[] {
  const texts = Array.isArray(log?.removed) ? log.removed.filter((each) => typeof each === 'string') : [];
  return removed === undefined ? texts : [removed, ...texts];
}

/** The rows of the log, piece by piece. */
async function* rowPieces(): AsyncGenerator<readonly Row[]> {
  const former = await read<Row>('notes', 'log');
  if (former) yield [former];
  yield* readPieces<Row>('notes', 'entry ');
  yield* readPieces<Row>('notes', 'removed ');
}

/** What is kept; where the browser gives nothing, or not all, what it gave. */
async function readKept(): Promise<KeptLog> {
  const entries: PracticeEntry[] = [];
  const removed: string[] = [];
  const unreadable: Unreadable[] = [];
  try {
    for await (const rows of rowPieces()) {
      for (const found of rows.flatMap(valuesIn)) {
        const entry = soundEntry(found.value);
        if (entry) entries.push(entry);
        else unreadable.push(found);
      }
      removed.push(...rows.flatMap(removedIn));
    }
  } catch {
    // It is said on the page that nothing is kept.
  }
  return { log: mergeLogs({ ...EMPTY_LOG, entries, removed }, EMPTY_LOG), unreadable };
}

async function readAnew(): Promise<KeptLog> {
  otherPages();
  isStale = false;
  const { log, unreadable } = await readKept();
  latest = { log: mergeLogs(log, fresh), unreadable };
  return latest;
}

/** The log as it is kept; what this visit added where nothing can be read. */
export function readLog(): Promise<KeptLog> {
  if (latest && !isStale) return Promise.resolve(latest);
  reading ??= readAnew().finally(() => {
    reading = null;
  });
  return reading;
}

async function tell(): Promise<PracticeLog> {
  const kept = await readLog();
  for (const listener of listeners) listener(kept);
  return kept.log;
}

/** Changes what this visit added and what was read in the same way. */
function change(how: (log: PracticeLog) => PracticeLog): void {
  fresh = how(fresh);
  if (latest) latest = { ...latest, log: how(latest.log) };
}

/** Keeps rows; what cannot be kept stays at hand until the page is left. */
async function write(rows: readonly Row[]): Promise<void> {
  await keepMany('notes', rows).then(
    () => {
      otherPages().postMessage(null);
      void askToPersist();
    },
    () => undefined,
  );
}

const without = (log: PracticeLog, gone: ReadonlySet<string>): PracticeLog => ({
  ...log,
  entries: log.entries.filter(({ id }) => !gone.has(id)),
});

/** Keeps an entry, in place of an earlier version of itself. */
export async function keepEntry(entry: PracticeEntry): Promise<PracticeLog> {
  change((log) => addEntry(without(log, new Set([entry.id])), entry));
  await write([entryRow(entry)]);
  return tell();
}

/** Takes an entry out for good. */
export async function dropEntry(id: string): Promise<PracticeLog> {
  change((log) => removeEntry(log, id));
  await write([removedRow(id)]);
  return tell();
}

/** Lets go of entries that may come back. */
export async function letGoOf(ids: readonly string[]): Promise<void> {
  if (ids.length === 0) return;
  change((log) => without(log, new Set(ids)));
  for (const id of ids) await drop(['notes'], entryName(id));
  otherPages().postMessage(null);
  await tell();
}

/** Takes in everything of another log. @returns how many entries are new. */
export async function takeIn(other: PracticeLog): Promise<number> {
  const { log: before } = await readLog();
  change((log) => mergeLogs(log, other));
  const { log: after } = await readLog();
  const known = new Set<unknown>([...before.entries, ...before.removed]);
  const isNew = (each: unknown) => !known.has(each);
  await write(
    rowsOf({ ...after, entries: after.entries.filter(isNew), removed: after.removed.filter(isNew) }),
  );
  return Math.max(0, (await tell()).entries.length - before.entries.length);
}

/** Takes what cannot be read out of the way, once its student has it or wants it no more. */
export async function dropUnreadable(rows: readonly Unreadable[]): Promise<void> {
  const names = new Set(rows.map(({ name }) => name));
  for (const name of names) {
    // The one row of former pages holds sound entries too: they get rows of their own before it goes.
    if (!name.startsWith('entry ')) await write(rowsOf((await readLog()).log));
    await drop(['notes'], name);
  }
  isStale = true;
  await tell();
}

// Where the browser's data are cleared while the page is open, what this visit added is kept anew.
onGone(() => {
  isStale = true;
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
