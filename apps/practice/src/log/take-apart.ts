/** What a thread read of a log, on the page: a year of practice takes seconds, so the page takes it in pieces. */
import { EMPTY_LOG } from '@shedbook/coach';
import { jsonIn, type PracticeEntry, type PracticeLog } from '@shedbook/core';
import { askWorker } from '@shedbook/stand';
import type { LogRead } from './log-read.ts';
import { soundEntry } from './sound-entry.ts';

/** Milliseconds that reading a file takes at most: many times what years of practice take on a slow phone. */
const DEADLINE_MS = 120_000;

/** Entries that are taken apart at once: hundredths of a second on a phone. */
const PIECE = 100;

const breathe = () => new Promise((resolve) => setTimeout(resolve));

/** The log; null where nothing of it could be read. */
export async function takeApart({ rows, removed }: LogRead): Promise<PracticeLog | null> {
  if (!rows) return null;
  const entries: PracticeEntry[] = [];
  for (let from = 0; from < rows.length; from += PIECE) {
    entries.push(...rows.slice(from, from + PIECE).flatMap((row) => soundEntry(jsonIn(row)) ?? []));
    await breathe();
  }
  return { ...EMPTY_LOG, entries, removed };
}

/** What a thread makes of a file. @throws Error where it cannot be read in the time that there is */
export async function readBeside<A>(thread: Worker, file: Blob): Promise<A> {
  const answer = await askWorker<A | null>(thread, file, { deadlineMs: DEADLINE_MS });
  if (answer === null) throw new Error('no such file');
  return answer;
}
