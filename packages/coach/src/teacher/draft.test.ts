import { Bpm } from '@shedbook/core';
import { expect, it } from 'vitest';
import { funk, swing } from '../../../../internal/testing/loops.ts';
import { keyOf, logOf, loops, MISSED_LETS, NOW, type Played, TODAY } from '../../test/students.ts';
import { addEntry } from '../log/merge.ts';
import type { Assignment } from '../plan/plan-item.ts';
import { isCoachSilent } from '../plan/silent.ts';
import { planFor } from '../plan/student-plan.ts';
import { formatDay } from '../time/moment.ts';
import { draftNext } from './draft.ts';
import { passEntry } from './pass.ts';

/** The sheet goes from 72 to 120 in steps of 8. */
function set(number: number, more: Partial<Assignment> = {}): Assignment {
  return { lesson: swing.id, exercise: keyOf(swing, number), pinned: false, note: null, ...more };
}

function draftOf(assignments: readonly Assignment[], played: readonly Played[], passedAt?: number) {
  const heard = logOf(...played);
  const pass = passEntry({
    id: 'teacher 1',
    startedAt: `${formatDay(TODAY)}T10:00:00Z`,
    lesson: swing.id,
    exercise: keyOf(swing, 1),
    bpm: Bpm(passedAt ?? 0),
  });
  const log = passedAt === undefined ? heard : addEntry(heard, pass);
  return draftNext({ name: 'Bram', shelf: [swing], log, assignments }, NOW);
}

/** What becomes of the one exercise that was set. */
function became(more: Partial<Assignment>, played: readonly Omit<Played, 'number'>[], passedAt?: number) {
  const [first] = draftOf(
    [set(1, more)],
    played.map((each) => ({ number: 1, ...each })),
    passedAt,
  );
  return { toBpm: first?.toBpm, isTaken: first?.isTaken, why: first?.why };
}

it('[CH3000] what was set goes on by how far it has come: two steps of the ladder from where it was clean or passed', () => {
  const aim = { toBpm: 88 };
  expect(became(aim, [])).toMatchObject({ toBpm: 88, why: { fact: 'set-not-played' }, isTaken: true });
  expect(became(aim, [{ daysAgo: 1, loops: loops(4, 80) }])).toMatchObject({
    toBpm: 88,
    why: { fact: 'set-not-there', bpm: 80, aimBpm: 88 },
  });
  expect(became(aim, [{ daysAgo: 1, loops: loops(6, 88) }])).toMatchObject({
    toBpm: 104,
    why: { fact: 'set-clean', bpm: 88, aimBpm: 104 },
  });
  expect(became(aim, [], 96)).toMatchObject({
    toBpm: 112,
    why: { fact: 'set-passed', bpm: 96, aimBpm: 112 },
  });
  // never beyond the goal of the sheet
  expect(became(aim, [{ daysAgo: 1, loops: loops(6, 112) }])).toMatchObject({ toBpm: 120 });
});

it("[CH3000] the teacher's pass at the goal is done whatever was heard; what is pinned stays", () => {
  const slipped = [{ daysAgo: 1, loops: loops(8, 80, 'loose', MISSED_LETS) }];
  const done = { why: { fact: 'done-passed', bpm: 120 }, isTaken: false };
  expect(became({}, slipped, 120)).toMatchObject(done);
  expect(became({ pinned: true }, [], 120)).toMatchObject({ ...done, isTaken: true });
});

it('[CH3000] what slips comes back, then what comes next, each once and with its reason', () => {
  const draft = draftOf(
    [set(2)],
    [
      { number: 1, daysAgo: 9, loops: loops(6, 80) },
      { number: 1, daysAgo: 2, loops: loops(9, 80, 'loose', MISSED_LETS) },
      { number: 2, daysAgo: 2, loops: loops(4, 72) },
    ],
  );
  const [first, second, ...others] = draft;
  expect([first?.exercise.exercise.number, second?.exercise.exercise.number]).toEqual([2, 1]);
  expect(second).toMatchObject({ why: { fact: 'not-steady-there' }, isTaken: true });
  expect(new Set(draft.map(({ exercise }) => exercise.item)).size).toBe(draft.length);
  expect(others).toHaveLength(1);
  expect(others[0]?.why.fact).toMatch(/seldom-holds|next-on-sheet/);
});

it('[CH3000] a draft stops at four exercises, what was set aside', () => {
  const five = [1, 2, 3, 4, 5].map((number) => set(number));
  expect(draftOf(five, []).map(({ isTaken }) => isTaken)).toEqual([true, true, true, true, true]);
  expect(draftOf([], [])).toMatchObject([{ why: { fact: 'begin-lesson', lesson: 'First swing' } }]);
});

it('[CH3801] while something that was set is not played yet, what is new is named and not proposed', () => {
  // common practice: nothing new before last week's page was touched, and what could follow is known
  const told = draftOf([set(1)], []).map(({ exercise, isTaken, why }) => [
    exercise.exercise.number,
    isTaken,
    why.fact,
  ]);
  expect(told).toEqual([
    [1, true, 'set-not-played'],
    [2, false, 'after-set'],
  ]);
  // where there is nothing more in the lessons that are theirs, nothing of another one is brought in
  const all = swing.lesson.exercises.map(({ number }) => set(number));
  const student = { name: 'Bram', shelf: [funk, swing], log: logOf(), assignments: all };
  expect(draftNext(student, NOW)).toHaveLength(all.length);
});

it('[CH3004] a coach that is off or paused proposes nothing: plan and draft are what the teacher set', () => {
  const firm = logOf(
    { number: 1, daysAgo: 4, loops: loops(12, 120) },
    { number: 1, daysAgo: 1, loops: loops(12, 122) },
    { number: 2, daysAgo: 1, loops: loops(9, 80, 'loose', MISSED_LETS) },
  );
  const task = { shelf: [swing], log: firm, assignments: [set(1)] };
  const plan = (isSilent: boolean) => planFor('bram', { ...task, now: NOW, minutes: 30, isSilent });
  const numbers = (isSilent: boolean) => [
    ...new Set(plan(isSilent).items.flatMap(({ number }) => number ?? [])),
  ];
  expect(numbers(true)).toEqual([1]);
  expect(numbers(false).length).toBeGreaterThan(1);
  expect(plan(true).items.reduce((sum, { minutes }) => sum + minutes, 0)).toBe(30);
  const draft = draftNext({ name: 'Bram', ...task, isSilent: true }, NOW);
  expect(draft.map(({ exercise }) => exercise.exercise.number)).toEqual([1]);
  const at = `${formatDay(TODAY)}T12:00:00+01:00`;
  const paused = (until: string | null) => isCoachSilent({ state: 'paused', until }, at);
  expect([paused(formatDay(TODAY + 1)), paused(formatDay(TODAY)), paused(null)]).toEqual([true, false, true]);
  expect(isCoachSilent({ state: 'off', until: null }, at)).toBe(true);
  expect(isCoachSilent({ state: 'on', until: null }, at)).toBe(false);
});

it('[CH3001] the plan leads to the tempo and says the day that the teacher set', () => {
  const by = formatDay(TODAY + 6);
  const plan = (assignment: Assignment) =>
    planFor('bram', {
      ...{ shelf: [swing], log: logOf(), now: NOW, minutes: 20 },
      assignments: [assignment],
    }).items.find(({ kind }) => kind === 'assigned');
  expect(plan(set(1, { toBpm: 88, by }))).toMatchObject({
    tempo: { fromBpm: 72, goalBpm: 88 },
    reason: {
      fact: 'teacher-aims',
      what: { fact: 'teacher-set' },
      aim: { fact: 'up-to-by', bpm: 88, day: 6 },
    },
  });
  expect(plan(set(1, { by }))).toMatchObject({
    tempo: { goalBpm: 120 },
    reason: { aim: { fact: 'ready-by', day: 6 } },
  });
  // a day that is past says nothing any more
  expect(plan(set(1, { toBpm: 64, by: formatDay(TODAY - 1), note: 'Softly.' }))).toMatchObject({
    tempo: { fromBpm: 64, goalBpm: 64 },
    reason: { fact: 'teacher-noted', what: { fact: 'teacher-aims', aim: { fact: 'up-to', bpm: 64 } } },
  });
  expect(plan(set(1))).toMatchObject({ tempo: { goalBpm: 120 }, reason: { fact: 'teacher-set' } });
});
