/**
 * Sending what was played to the teacher, where the page was opened by a private link.
 *
 * Conventions: the log is kept on the device first. What was not acknowledged goes again, and the desk takes each row
 * once, so nothing is lost and nothing counts twice. An entry goes when its student has paused, since it grows while
 * they play.
 */
import { EMPTY_LOG } from '@shedbook/coach';
import { PRACTICE_LOG_VERSION, type PracticeLog } from '@shedbook/core';
import { useSyncExternalStore } from 'react';
import { keepMany, read } from '../kept/database.ts';
import { rememberedOwn, rememberOwn } from '../kept/students.ts';
import { onLog, readLog } from '../log/log-store.ts';
import { keepPasses } from './passes.ts';
import { firstPart, type Marks, type RowToSend, rowsToSend } from './rows-to-send.ts';

/** How it stands. */
export interface Sending {
  /**
   * `waits`: for the network; `later`: the desk takes no more for now; `refused`: the link opens nothing any more; `off`: the
   * student does not want it.
   */
  readonly state: 'sent' | 'on its way' | 'waits' | 'later' | 'refused' | 'off';
  /** How many entries have not gone. */
  readonly left: number;
}

/** Milliseconds of peace before an entry goes. */
const PAUSE_MS = 8_000;

/** Milliseconds before the next attempt after one that failed, doubled with each up to the longest. */
const RETRY_MS = 15_000;
const LONGEST_RETRY_MS = 15 * 60_000;

const WANTED = 'week.send';
const SENT = 'sent';

interface SentRow {
  readonly name: typeof SENT;
  readonly marks: Marks;
}

/** Null until it was looked what there is. */
let now: Sending | null = null;
const listeners = new Set<() => void>();
/** Where nothing can be kept, what went is known until the page is left. */
let fresh: Marks = {};
let timer: ReturnType<typeof setTimeout> | null = null;
let failures = 0;
let work: Promise<void> = Promise.resolve();

/** Whether the teacher is to see what is played: yes until the student says otherwise. */
export function isWanted(): boolean {
  return rememberedOwn(WANTED) !== 'no';
}

function show(next: Sending): void {
  now = next;
  for (const listener of listeners) listener();
}

async function marks(): Promise<Marks> {
  const kept = await read<SentRow>('notes', SENT).catch(() => undefined);
  return { ...kept?.marks, ...fresh };
}

async function keepMarks(rows: readonly RowToSend[]): Promise<void> {
  fresh = { ...fresh, ...Object.fromEntries(rows.map(({ id, mark }) => [id, mark])) };
  const row: SentRow = { name: SENT, marks: await marks() };
  await keepMany('notes', [row]).catch(() => undefined);
}

/** What became of rows, by the answer that says so where it is not `taken`: otherwise nobody answered as a desk does. */
const OUTCOMES: Readonly<Record<number, 'refused' | 'later'>> = {
  404: 'refused',
  429: 'later',
  507: 'later',
};

/** Sends rows. @returns whether the desk has them, or how it stands with them */
async function post(rows: readonly RowToSend[]): Promise<'taken' | 'waits' | 'later' | 'refused'> {
  const body = JSON.stringify({ version: PRACTICE_LOG_VERSION, rows: rows.map(({ text }) => text) });
  try {
    const response = await fetch('../log', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body,
    });
    if (response.ok) return 'taken';
    return OUTCOMES[response.status] ?? 'waits';
  } catch {
    return 'waits';
  }
}

function again(afterMs: number): void {
  if (timer !== null) clearTimeout(timer);
  timer = setTimeout(sendNow, afterMs);
}

/** Tries again later: the later, the more attempts have failed. */
function tryAgain(): void {
  failures += 1;
  again(Math.min(RETRY_MS * 2 ** (failures - 1), LONGEST_RETRY_MS));
}

/** Something else that goes to the teacher. @returns whether nothing of it is left */
export type Errand = () => Promise<boolean>;

const errands: Errand[] = [];

/** Runs the errands, and tries again where something is left of one. */
async function runErrands(): Promise<void> {
  const done = await Promise.all(errands.map((errand) => errand().catch(() => false)));
  if (!done.every(Boolean)) tryAgain();
}

async function send(): Promise<void> {
  await sendRows();
  await runErrands();
}

async function sendRows(): Promise<void> {
  const { log } = await readLog().catch(() => ({ log: EMPTY_LOG as PracticeLog }));
  for (;;) {
    const rows = rowsToSend(log, await marks());
    if (!isWanted()) return show({ state: 'off', left: rows.length });
    if (rows.length === 0) return show({ state: 'sent', left: 0 });
    show({ state: 'on its way', left: rows.length });
    const part = firstPart(rows);
    const outcome = await post(part);
    if (outcome === 'taken') {
      failures = 0;
      await keepMarks(part);
      continue;
    }
    show({ state: outcome, left: rows.length });
    return tryAgain();
  }
}

/** Sends what has not gone, after whatever is being sent. */
function sendNow(): void {
  work = work.then(send, send);
}

/** Decides whether the teacher is to see what is played. */
export function wantSending(isOn: boolean): void {
  rememberOwn(WANTED, isOn ? 'yes' : 'no');
  sendNow();
}

/** Has something else go with the rows. @returns what makes it go now */
export function alsoSend(errand: Errand): () => void {
  errands.push(errand);
  return sendNow;
}

let isStarted = false;

/** Begins to send, once; called where the page was opened by a private link. */
export function startSending(): void {
  if (isStarted) return;
  isStarted = true;
  void keepPasses().catch(() => undefined);
  onLog(() => again(PAUSE_MS));
  window.addEventListener('online', sendNow);
  document.addEventListener('visibilitychange', sendNow);
  sendNow();
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** How it stands, as it changes; null until it was looked what there is. */
export function useSending(): Sending | null {
  return useSyncExternalStore(subscribe, () => now);
}
