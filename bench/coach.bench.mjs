/**
 * How long a plan and a teacher's summary take for a year of practice, and what the plan is worth beside plain orders
 * of practice, simulated: the assumptions are in `internal/testing/simulated-practice/ASSUMPTIONS.md`.
 *
 * Conventions: `SHEDBOOK_STUDENTS` says how many students of each kind, 200 where it is left out; tempi held a week
 * after eight weeks, averaged over the page.
 */
import { planPractice, summariseStudent } from '@shedbook/coach';
import { Bpm, exerciseKey, Seconds, seededRandom } from '@shedbook/core';
import { summarise } from '../internal/testing/simulated-practice/simulate.mjs';
import { simulate } from './coach-figures.mjs';
import { lessonOf } from './material.mjs';

export const name = 'coach';

const CELLS = ['..x', 'x..', 'x.x', '...'];
const EXERCISES = 24;
const ENTRIES = 1500;
const LOOPS = 12;
const DAY_MS = 86_400_000;
const START_MS = Date.UTC(2025, 10, 25, 18);

function shelfOf() {
  const patterns = Array.from({ length: EXERCISES }, (_, i) =>
    [i, i >> 2, i >> 4, i + (i >> 2)].map((n) => CELLS[n % CELLS.length]).join(' '),
  );
  const text = `title: Bench\ntempo: {start: 72, goal: 120, step: 8}\nfeel: triplet\nexercises:\n${patterns.map((each) => `  - ${each}`).join('\n')}\n`;
  return [{ id: 'bench', lesson: lessonOf(text) }];
}

/** Verdicts of a loop, the clean ones more often.
 @type {readonly import('@shedbook/core').LoopVerdict[]} */
const VERDICTS = ['stumble', 'loose', 'clean', 'clean', 'clean'];

/**
 * @param {readonly import('@shedbook/coach').ShelfLesson[]} shelf
 * @returns {import('@shedbook/core').PracticeLog}
 */
function logOf(shelf) {
  const random = seededRandom(1);
  const keys = shelf.flatMap(({ lesson }) => lesson.exercises.map(exerciseKey));
  const entries = Array.from({ length: ENTRIES }, (_, i) => ({
    id: `bench ${i}`,
    device: 'bench',
    startedAt: new Date(START_MS + Math.floor((i * 365) / ENTRIES) * DAY_MS).toISOString(),
    durationSeconds: Seconds(180),
    lesson: 'bench',
    exercise: keys[random.below(keys.length)] ?? '',
    form: 'loop',
    heardBy: /** @type {const} */ ('ear'),
    loops: Array.from({ length: LOOPS }, () => ({
      bpm: Bpm(72 + 8 * random.below(7)),
      verdict: VERDICTS[random.below(VERDICTS.length)] ?? 'clean',
      faults: [],
    })),
  }));
  return { version: 1, entries, removed: [] };
}

function milliseconds(work) {
  const start = performance.now();
  work();
  return Math.round(performance.now() - start);
}

const STUDENTS = Number(process.env.SHEDBOOK_STUDENTS ?? 200);

/** What every order of practice came to with the students of one variant. */
function rowsOf({ name, isSeen }, all) {
  const held = Object.entries(all).map(([order, tempi]) => ({ order, tempi, ...summarise(tempi) }));
  const [coach, ...others] = held;
  if (!coach) throw new Error('nobody practised');
  const title = `${name}${isSeen ? ' (seen)' : ''}`;
  const paired = ({ tempi }) => summarise(coach.tempi.map((bpm, i) => bpm - tempi[i]));
  return [
    { what: `${title}: coach (spread ${coach.sd.toFixed(0)})`, value: coach.mean, unit: 'bpm' },
    ...others.map((other) => {
      const { mean, sd } = paired(other);
      const error = sd / Math.sqrt(STUDENTS);
      return { what: `  more than ${other.order} (± ${error.toFixed(1)})`, value: mean, unit: 'bpm' };
    }),
  ];
}

/** A line as soon as a variant is done: all of them take some minutes. */
function tell(variant, tempi) {
  const rows = rowsOf(variant, tempi).map(({ what, value }) => `${what.trim()} ${value.toFixed(2)}`);
  console.error(`  ${rows.join('; ')}`);
}

export async function run() {
  const shelf = shelfOf();
  const log = logOf(shelf);
  const now = '2026-11-25T18:00:00Z';
  const plan = { shelf, log, now, minutes: 45, assignments: [], seed: 1 };
  const size = `a year, ${ENTRIES} entries`;
  return [
    { what: `plan of 45 minutes (${size})`, value: milliseconds(() => planPractice(plan)), unit: 'ms' },
    {
      what: `summary of a student (${size})`,
      value: milliseconds(() => summariseStudent({ name: 'Bram', shelf, log, assignments: [] }, now)),
      unit: 'ms',
    },
    ...(await simulate(STUDENTS, tell)).flatMap(({ variant, tempi }) => rowsOf(variant, tempi)),
  ];
}
