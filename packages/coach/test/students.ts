/** Practice logs for tests: entries made by hand, and the roster of the Tannery Drum Room. */
import {
  Bpm,
  exerciseKey,
  type LoopFault,
  type LoopRecord,
  type LoopVerdict,
  type PracticeEntry,
  type PracticeLog,
  Seconds,
} from '@shedbook/core';
import { funk, swing } from '../../../internal/testing/loops.ts';
import { addEntry, EMPTY_LOG } from '../src/log/merge.ts';
import type { ShelfLesson } from '../src/mastery/identity.ts';
import type { StudentFile } from '../src/teacher/summary.ts';
import { formatDay } from '../src/time/moment.ts';

/** The day on which the tests take place. */
export const TODAY = 20_782;

/** Noon of it. */
export const NOW = `${formatDay(TODAY)}T12:00:00Z`;

/** Some loops at one tempo with one verdict. */
export function loops(
  count: number,
  bpm: number,
  verdict: LoopVerdict = 'clean',
  faults: readonly LoopFault[] = [],
): readonly LoopRecord[] {
  return Array.from({ length: count }, () => ({ bpm: Bpm(bpm), verdict, faults }));
}

/** The lasting name of an exercise by its number. */
export function keyOf(shelf: ShelfLesson, number: number): string {
  const exercise = shelf.lesson.exercises.find((each) => each.number === number);
  if (!exercise) throw new Error(`no exercise ${number}`);
  return exerciseKey(exercise);
}

/** What is played, how long ago. */
export interface Played {
  readonly shelf?: ShelfLesson;
  readonly number: number;
  readonly daysAgo: number;
  readonly loops: readonly LoopRecord[];
  readonly heardBy?: 'ear' | 'student';
}

/** An entry of a log. */
export function entryOf(played: Played): PracticeEntry {
  const { shelf = swing, number, daysAgo, loops: records, heardBy = 'ear' } = played;
  return {
    id: `phone ${shelf.id} ${number} ${daysAgo}`,
    device: 'phone',
    startedAt: `${formatDay(TODAY - daysAgo)}T10:00:00Z`,
    durationSeconds: Seconds(300),
    lesson: shelf.id,
    exercise: keyOf(shelf, number),
    form: 'loop',
    heardBy,
    loops: records,
  };
}

/** A log of what was played. */
export function logOf(...played: readonly Played[]): PracticeLog {
  return played.map(entryOf).reduce(addEntry, EMPTY_LOG);
}

function missedLet(bar: number): LoopFault {
  return { kind: 'missed', voice: 'snare', place: { bar, beat: 1, slot: 3 }, amount: 1 };
}

/** A snare stroke missed on the let of 1, where exercises 1, 3 and 5 of the swing sheet have one. */
export const MISSED_LET = missedLet(1);

/** The same in every bar of the loop. */
export const MISSED_LETS: readonly LoopFault[] = [1, 2, 3, 4].map(missedLet);

const shelf = [swing, funk];

/** The students of the Tannery Drum Room: steady, ahead, just begun, back after a pause. */
export const roster: readonly StudentFile[] = [
  {
    name: 'Bram',
    shelf,
    log: logOf(
      { number: 2, daysAgo: 6, loops: loops(12, 120) },
      { number: 2, daysAgo: 3, loops: loops(12, 120) },
      { number: 1, daysAgo: 2, loops: [...loops(2, 72), ...loops(8, 80, 'loose', MISSED_LETS)] },
    ),
    assignments: [],
  },
  {
    name: 'Ifeoma',
    shelf,
    log: logOf(
      ...[1, 2, 3, 4, 5, 6].flatMap((number) => [
        { number, daysAgo: 5, loops: loops(12, 120) },
        { number, daysAgo: 1, loops: loops(12, 122) },
      ]),
    ),
    assignments: [],
  },
  { name: 'Kaito', shelf, log: EMPTY_LOG, assignments: [] },
  {
    name: 'Sunniva',
    shelf,
    log: logOf(
      { number: 1, daysAgo: 95, loops: loops(12, 120) },
      { number: 1, daysAgo: 90, loops: loops(12, 120) },
    ),
    assignments: [{ lesson: funk.id, exercise: keyOf(funk, 1), pinned: true, note: 'Loud two and four.' }],
  },
];
