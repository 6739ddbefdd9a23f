/**
 * The file of a take from the practice room: what was played, and the verdict on every loop.
 *
 * Conventions: a zip whose `take.json` says which lesson, exercise and form it is of; the rest of it is for the ear.
 */
import { parsePracticeLog, TAKE_DEVICE } from '@shedbook/coach';
import { PRACTICE_LOG_VERSION, type PracticeLog } from '@shedbook/core';
import { strFromU8, unzipSync } from 'fflate';

/** The part that says what it is of, and bytes that it has at most. */
const FACTS = 'take.json';
const FACTS_BYTES = 4 * 1024 * 1024;

function factsOf(bytes: Uint8Array): Record<string, unknown> | null {
  try {
    const facts = unzipSync(bytes, {
      filter: ({ name, originalSize }) => name === FACTS && originalSize <= FACTS_BYTES,
    })[FACTS];
    return facts ? (JSON.parse(strFromU8(facts)) as Record<string, unknown>) : null;
  } catch {
    return null;
  }
}

/** A log with the take as its only entry, or null where the file is no take. */
export function readTakeFile(bytes: Uint8Array): PracticeLog | null {
  const facts = factsOf(bytes);
  if (!facts) return null;
  const { startedAt, lesson, exercise, form, verdicts } = facts;
  const entry = {
    id: `${TAKE_DEVICE} ${facts['id']}`,
    device: TAKE_DEVICE,
    startedAt,
    durationSeconds: Math.max(1, Math.round(Number(facts['durationSeconds']))),
    lesson,
    exercise,
    form,
    heardBy: 'ear',
    loops: verdicts,
  };
  const log = { version: PRACTICE_LOG_VERSION, entries: [entry], removed: [] };
  return parsePracticeLog(JSON.stringify(log), 'take.json').log;
}
