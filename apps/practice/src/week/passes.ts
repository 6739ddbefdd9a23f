/** What the teacher passed, brought into the log of this device, so that plan and progress know of it. */
import type { PracticeEntry } from '@shedbook/core';
import { keepEntry, letGoOf, readLog } from '../log/log-store.ts';
import { soundEntry } from '../log/sound-entry.ts';
import { lastWeek } from './read-week.ts';

function entryIn(text: string): PracticeEntry | null {
  try {
    return soundEntry(JSON.parse(text));
  } catch {
    return null;
  }
}

/** Keeps what the teacher passed, and lets go of what they took back. */
export async function keepPasses(): Promise<void> {
  const week = lastWeek();
  if (!week) return;
  const passes = week.passes.flatMap((text) => entryIn(text) ?? []);
  const wanted = new Set(passes.map(({ id }) => id));
  const { entries } = (await readLog()).log;
  const known = new Set(entries.map(({ id }) => id));
  const gone = entries.filter(({ id, heardBy }) => heardBy === 'teacher' && !wanted.has(id));
  await letGoOf(gone.map(({ id }) => id));
  for (const pass of passes.filter(({ id }) => !known.has(id))) await keepEntry(pass);
}
