/**
 * The file of a take from the practice room: what was played, and the verdict on every loop.
 *
 * Conventions: a zip whose `take.json` says which lesson, exercise and form it is of; the rest of it is for the ear.
 */
import { itemKey, momentOf, parsePracticeLog } from '@shedbook/coach';
import { PRACTICE_LOG_VERSION, type PracticeEntry, type PracticeLog } from '@shedbook/core';
import { strFromU8, unzipSync } from 'fflate';

/** What an entry of such a take calls its device. */
const TAKE = 'take';

function factsOf(bytes: Uint8Array): Record<string, unknown> | null {
  try {
    const facts = unzipSync(bytes, { filter: ({ name }) => name === 'take.json' })['take.json'];
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
    id: `${TAKE} ${facts['id']}`,
    device: TAKE,
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

function isWithin(take: PracticeEntry, other: PracticeEntry): boolean {
  const [start, from] = [take, other].map((each) => momentOf(each.startedAt).instantSeconds) as [
    number,
    number,
  ];
  const sameThing = itemKey(take.lesson, take.exercise) === itemKey(other.lesson, other.exercise);
  return sameThing && start < from + other.durationSeconds && from < start + take.durationSeconds;
}

/** The log without takes of practice that it has anyway: while a take was made, the practice room kept its log. */
export function withoutDoubles(log: PracticeLog): PracticeLog {
  const others = log.entries.filter((entry) => entry.device !== TAKE);
  const entries = log.entries.filter(
    (entry) => entry.device !== TAKE || !others.some((other) => isWithin(entry, other)),
  );
  return { ...log, entries };
}
