import { expect, it } from 'vitest';
import { funk, swing } from '../../../../internal/testing/loops.ts';
import { keyOf, logOf, loops, MISSED_LETS, NOW, roster, TODAY } from '../../test/students.ts';
import { lessonsOf, planFor } from '../plan/student-plan.ts';
import { summariseRoster, summariseStudent } from './summary.ts';

const [bram, ifeoma, kaito, sunniva] = summariseRoster(roster, NOW);

function numbers(standings: readonly { readonly exercise: { readonly number: number } }[] | undefined) {
  return standings?.map(({ exercise }) => exercise.number);
}

it('[CH33] a roster keeps its order', () => {
  expect(summariseRoster(roster, NOW).map(({ name }) => name)).toEqual([
    'Bram',
    'Ifeoma',
    'Kaito',
    'Sunniva',
  ]);
});

it('[CH33] Bram: one exercise firm, one shaky with its spot, due, and what to give next', () => {
  expect(numbers(bram?.firm)).toEqual([2]);
  expect(numbers(bram?.shaky)).toEqual([1]);
  expect(numbers(bram?.due)).toContain(1);
  expect(bram).toMatchObject({ lastDay: TODAY - 2, minutesThisWeek: 15 });
  expect(bram?.shaky[0]?.sore?.told).toEqual({
    ...{ fact: 'sore-spot', limb: 'left hand', voice: 'snare' },
    place: { fact: 'syllable', syllable: 'let', beat: 1 },
  });
  expect(bram?.next).not.toBeNull();
});

it('[CH33] Ifeoma: a whole sheet firm, nothing shaky, so the other sheet is next', () => {
  expect(numbers(ifeoma?.firm)).toEqual([1, 2, 3, 4, 5, 6]);
  expect(ifeoma?.shaky).toEqual([]);
  expect(ifeoma?.shakySkills).toEqual([]);
  expect(ifeoma?.next?.exercise).toMatchObject({ id: 'ghosts' });
  expect(ifeoma?.next?.why).toMatchObject({
    fact: 'nearest-new',
    adds: { fact: expect.stringMatching(/^adds-skills?$/) },
  });
});

it('[CH33] Kaito: nothing heard yet, and the simplest exercise is next', () => {
  expect(kaito).toMatchObject({ lastDay: null, minutesThisWeek: 0, firm: [], shaky: [], due: [] });
  expect(kaito?.next?.exercise.standing).toBe('new');
});

it('[CH33] Sunniva: back after three months, what was firm is due', () => {
  expect(numbers(sunniva?.due)).toEqual([1]);
  expect(sunniva?.lastDay).toBe(TODAY - 90);
  expect(sunniva?.minutesThisWeek).toBe(0);
});

it('[CH6004] what a clock that was ahead has dated later is not when a student played last', () => {
  const { entries } = logOf({ number: 1, daysAgo: 3, loops: loops(2, 72) });
  const [ahead] = logOf({ number: 1, daysAgo: -900, loops: loops(2, 72) }).entries;
  const log = { ...logOf(), entries: ahead ? [...entries, ahead] : [] };
  const of = { name: 'Bram', shelf: [swing], log, assignments: [] };
  expect(summariseStudent(of, NOW)).toMatchObject({ lastDay: TODAY - 3 });
  expect(summariseStudent({ ...of, log: { ...log, entries: log.entries.slice(1) } }, NOW).lastDay).toBeNull();
});

it('[CH34] a move that does not hold is met again in the exercise that has it with the least else that is new', () => {
  const log = logOf({ number: 1, daysAgo: 1, loops: loops(10, 80, 'loose', MISSED_LETS) });
  const { next, shakySkills } = summariseStudent({ name: 'Bram', shelf: [swing], log, assignments: [] }, NOW);
  // definition: exercise 1 has the move from "..." to "..x" on 1 and on 3; the one on 1 is missed every time
  expect(shakySkills.map(({ skill, evidence }) => [skill.from, skill.to, evidence.share])).toEqual([
    ['...', '..x', 0.5],
    [null, '..x', 0.5],
  ]);
  expect(next?.why).toEqual({
    fact: 'seldom-holds',
    skill: {
      fact: 'skill-over',
      cells: { fact: 'cell-move', from: '...', to: '..x' },
      limb: 'left hand',
      over: ['right hand', 'right foot'],
    },
    percent: 50,
    follows: { fact: 'needs-skill', more: 2 },
  });
  expect(next?.exercise.standing).toBe('new');
});

it('[CH34] a skill that was tried a few times only is not called shaky', () => {
  const log = logOf({ number: 3, daysAgo: 1, loops: loops(1, 80, 'loose', MISSED_LETS) });
  expect(summariseStudent({ name: 'Bram', shelf: [swing], log, assignments: [] }, NOW).shakySkills).toEqual(
    [],
  );
});

it('[CH34] what the teacher has set already is not suggested again', () => {
  const assignments = swing.lesson.exercises.map(({ number }) => ({
    lesson: swing.id,
    exercise: keyOf(swing, number),
    pinned: false,
    note: null,
  }));
  const student = { name: 'Kaito', shelf: [swing], log: logOf(), assignments };
  expect(summariseStudent(student, NOW).next).toBeNull();
});

it('[CH34] when everything is firm it is time for another page', () => {
  const log = logOf(
    ...swing.lesson.exercises.map(({ number }) => ({ number, daysAgo: 1, loops: loops(12, 120) })),
  );
  const { next } = summariseStudent({ name: 'Ifeoma', shelf: [swing], log, assignments: [] }, NOW);
  expect(next).toBeNull();
});

it('[CH1901] what comes next on the sheet in hand is next, as in the plan, whatever else lies on the desk', () => {
  const log = logOf(
    { number: 1, daysAgo: 2, loops: loops(12, 96, 'clean') },
    { number: 2, daysAgo: 1, loops: loops(12, 96, 'clean') },
  );
  for (const set of [[], [3], [1, 2, 3]]) {
    const assignments = set.map((number) => ({
      ...{ lesson: swing.id, exercise: keyOf(swing, number), pinned: false, note: null },
    }));
    const { next } = summariseStudent({ name: 'Kaito', shelf: [funk, swing], log, assignments }, NOW);
    expect(next).toMatchObject({ exercise: { id: swing.id }, why: { fact: 'next-on-sheet' } });
    expect(next?.exercise.exercise.number).toBe(set.length === 0 ? 3 : 4);
    const own = lessonsOf([funk, swing], assignments, log);
    const plan = planFor('Kaito', { shelf: own, log, now: NOW, minutes: 45, assignments });
    expect(plan.items.find(({ kind }) => kind === 'new')).toMatchObject({
      ...{ lesson: next?.exercise.id, number: next?.exercise.exercise.number },
    });
  }
});
