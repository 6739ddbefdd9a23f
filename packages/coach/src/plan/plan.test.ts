import fc from 'fast-check';
import { expect, it } from 'vitest';
import { funk, swing } from '../../../../internal/testing/loops.ts';
import { keyOf, logOf, loops, MISSED_LET, NOW, type Played } from '../../test/students.ts';
import { handsFreeItems } from './hands-free-items.ts';
import { planPractice } from './plan.ts';
import type { PlanItem, PlanTask } from './plan-item.ts';

function task(changes: Partial<PlanTask> = {}): PlanTask {
  return { shelf: [swing, funk], log: logOf(), now: NOW, minutes: 30, assignments: [], seed: 1, ...changes };
}

function kinds(items: readonly PlanItem[]): readonly string[] {
  return items.map(({ kind }) => kind);
}

const played: fc.Arbitrary<Played> = fc.record({
  shelf: fc.constantFrom(swing, funk),
  number: fc.integer({ min: 1, max: 3 }),
  daysAgo: fc.integer({ min: 0, max: 200 }),
  loops: fc
    .tuple(
      fc.integer({ min: 1, max: 12 }),
      fc.constantFrom(72, 96, 120),
      fc.constantFrom('unheard' as const, 'stumble' as const, 'loose' as const, 'clean' as const),
    )
    .map(([count, bpm, verdict]) => loops(count, bpm, verdict, verdict === 'loose' ? [MISSED_LET] : [])),
});

const anyTask: fc.Arbitrary<PlanTask> = fc
  .record({
    history: fc.array(played, { maxLength: 12 }),
    minutes: fc.oneof(fc.integer({ min: -5, max: 130 }), fc.double({ min: 0, max: 60, noNaN: true })),
    assignments: fc.array(
      fc.record({
        lesson: fc.constantFrom(swing.id, funk.id, 'gone'),
        exercise: fc.constantFrom(keyOf(swing, 1), keyOf(swing, 4), keyOf(funk, 2)),
        pinned: fc.boolean(),
        note: fc.constant(null),
      }),
      { maxLength: 4 },
    ),
    seed: fc.nat(),
    interleave: fc.boolean(),
  })
  .map(({ history, ...rest }) => task({ ...rest, log: logOf(...history) }));

it('[CH26] a plan fits the minutes, in whole minutes', () => {
  fc.assert(
    fc.property(anyTask, (each) => {
      const plan = planPractice(each);
      const total = plan.items.reduce((sum, item) => sum + item.minutes, 0);
      expect(plan.minutes).toBe(total);
      expect(total).toBeLessThanOrEqual(Math.max(0, each.minutes));
      for (const { minutes } of plan.items) expect(Number.isInteger(minutes) && minutes > 0).toBe(true);
    }),
    { numRuns: 120, seed: 20 },
  );
});

it('[CH27] warm-up comes first, breaks lie between, and nothing goes on for more than half an hour', () => {
  fc.assert(
    fc.property(anyTask, (each) => {
      const { items } = planPractice(each);
      if (items.length > 0) expect(kinds(items).indexOf('warm-up')).toBe(0);
      expect(kinds(items).lastIndexOf('warm-up')).toBeLessThanOrEqual(0);
      expect(kinds(items).at(-1)).not.toBe('break');
      let stretch = 0;
      for (const { kind, minutes } of items) {
        stretch = kind === 'break' ? 0 : stretch + minutes;
        expect(stretch).toBeLessThanOrEqual(30);
      }
    }),
    { numRuns: 120, seed: 21 },
  );
});

it('[CH29] there is at most one new thing beside what the teacher set, and no exercise twice in a row', () => {
  fc.assert(
    fc.property(anyTask, (each) => {
      const { items } = planPractice(each);
      expect(kinds(items).filter((kind) => kind === 'new').length).toBeLessThanOrEqual(1);
      const exercises = items.map(({ lesson, exercise, kind }) =>
        exercise ? `${lesson} ${exercise}` : kind,
      );
      exercises.forEach((name, i) => {
        if (i > 0) expect(name).not.toBe(exercises[i - 1]);
      });
    }),
    { numRuns: 120, seed: 22 },
  );
});

it('[CH31] the same task gives the same plan, another seed another order, and a plan is plain data', () => {
  const due = [1, 2, 3].map((number) => ({ number, daysAgo: 40, loops: loops(12, 120) }));
  const of = (seed: number) => planPractice(task({ log: logOf(...due), seed }));
  expect(of(5)).toEqual(of(5));
  expect(JSON.parse(JSON.stringify(of(5)))).toEqual(of(5));
  const orders = new Set(
    [1, 2, 3, 4, 5, 6, 7, 8].map((seed) => JSON.stringify(of(seed).items.map((i) => i.number))),
  );
  expect(orders.size).toBeGreaterThan(1);
});

it('[CH28] what the teacher set comes first, pinned before the rest, with the note', () => {
  const assignments = [
    { lesson: swing.id, exercise: keyOf(swing, 5), pinned: false, note: null },
    { lesson: funk.id, exercise: keyOf(funk, 2), pinned: true, note: 'Whisper the ghost notes.' },
  ];
  const { items } = planPractice(
    task({ assignments, log: logOf({ number: 1, daysAgo: 40, loops: loops(9, 120) }) }),
  );
  expect(items.slice(0, 3).map(({ kind, title, reason }) => [kind, title, reason])).toEqual([
    ['warm-up', { fact: 'groove-title', lesson: 'First swing' }, { fact: 'warm-up' }],
    [
      'assigned',
      { fact: 'exercise-title', name: 'Ghosts 2' },
      { fact: 'teacher-noted', what: { fact: 'teacher-pinned' }, note: 'Whisper the ghost notes.' },
    ],
    ['assigned', { fact: 'exercise-title', name: 'First swing 5' }, { fact: 'teacher-set' }],
  ]);
  // definition: what the teacher set is new, so nothing else is begun
  expect(kinds(items)).not.toContain('new');
});

it('[CH28] what is firm and not due can wait unless it is pinned', () => {
  const log = logOf({ number: 1, daysAgo: 1, loops: loops(12, 120) });
  const set = (pinned: boolean) =>
    planPractice(
      task({ log, assignments: [{ lesson: swing.id, exercise: keyOf(swing, 1), pinned, note: null }] }),
    );
  expect(kinds(set(true).items)).toContain('assigned');
  expect(kinds(set(false).items)).not.toContain('assigned');
});

it('[CH28] what the teacher set comes even when it is firm, once it is due', () => {
  const log = logOf({ number: 1, daysAgo: 150, loops: loops(12, 120) });
  const assignments = [{ lesson: swing.id, exercise: keyOf(swing, 1), pinned: false, note: null }];
  expect(planPractice(task({ log, assignments })).items[1]).toMatchObject({ kind: 'assigned', number: 1 });
});

it('[CH28] an exercise that is no longer on a sheet is said to be gone', () => {
  const gone = { lesson: swing.id, exercise: 'snare x x x x', pinned: true, note: null };
  expect(planPractice(task({ assignments: [gone] })).notes).toEqual([{ fact: 'set-and-gone', exercises: 1 }]);
});

it('[CH29] the new thing is the next of the sheet that was practised last; none while four are on their way', () => {
  const one = planPractice(task({ log: logOf({ shelf: funk, number: 1, daysAgo: 1, loops: loops(8, 64) }) }));
  expect(one.items.find(({ kind }) => kind === 'new')).toMatchObject({ lesson: funk.id, number: 2 });
  const begun = [1, 2, 3, 4].map((number) => ({ number, daysAgo: 1, loops: loops(8, 80) }));
  const four = planPractice(task({ log: logOf(...begun) }));
  expect(kinds(four.items)).not.toContain('new');
  expect(four.notes).toEqual([{ fact: 'nothing-new', exercises: 4 }]);
});

it('[CH30] due exercises take turns, the least likely to be still there among the first', () => {
  const due = [1, 2, 3].map((number) => ({ number, daysAgo: 30 * number, loops: loops(12, 120) }));
  const { items } = planPractice(task({ log: logOf(...due), minutes: 45 }));
  const reviews = items.filter(({ kind }) => kind === 'review').map(({ number }) => number);
  expect(reviews.slice(0, 3).toSorted()).toEqual([1, 2, 3]);
  expect(reviews.slice(3, 6).toSorted()).toEqual([1, 2, 3]);
});

it('[CH30] in turns nothing follows itself, whatever the seed', () => {
  const due = [1, 2, 3].map((number) => ({ number, daysAgo: 40, loops: loops(12, 120) }));
  for (let seed = 0; seed < 30; seed += 1) {
    const { items } = planPractice(task({ log: logOf(...due), minutes: 60, seed }));
    const numbers = items.filter(({ kind }) => kind === 'review').map(({ number }) => number);
    const from = items.findIndex(({ kind }) => kind === 'review');
    const turns = items.slice(from, from + 7).filter(({ kind }) => kind === 'time');
    expect(numbers.some((number, i) => i > 0 && number === numbers[i - 1])).toBe(false);
    expect(turns).toEqual([]);
  }
});

it('[CH30] turns can be had as blocks instead', () => {
  const due = [1, 2, 3].map((number) => ({ number, daysAgo: 30 * number, loops: loops(12, 120) }));
  const { items } = planPractice(task({ log: logOf(...due), minutes: 45, interleave: false }));
  const reviews = items.filter(({ kind }) => kind === 'review');
  // definition: least likely to be still there first, which is the longest ago
  expect(reviews.map(({ number, minutes }) => [number, minutes])).toEqual([
    [3, 4],
    [2, 4],
    [1, 4],
  ]);
});

it('[CH32] every item says why, and where to begin', () => {
  const history = [
    { number: 1, daysAgo: 9, loops: [...loops(4, 88), ...loops(4, 96, 'loose', [MISSED_LET])] },
    { number: 2, daysAgo: 9, loops: loops(4, 80, 'stumble') },
  ];
  const { items } = planPractice(task({ log: logOf(...history) }));
  const first = items.find(({ kind, number }) => kind === 'review' && number === 1);
  // definition: clean at 88 a while ago, so begin two steps of 8 below
  expect(first).toMatchObject({
    tempo: { fromBpm: 72, goalBpm: 120 },
    reason: {
      fact: 'listen-for',
      what: { fact: 'played-clean', day: -9, bpm: 88, goalBpm: 120 },
      sore: { limb: 'left hand', voice: 'snare', place: { fact: 'syllable', syllable: 'let', beat: 1 } },
    },
  });
  expect(items.find(({ kind, number }) => kind === 'review' && number === 2)).toMatchObject({
    tempo: { fromBpm: 72, goalBpm: 120 },
    reason: { fact: 'played-shaky', day: -9 },
  });
});

it('[CH32] what was clean yesterday begins one step below', () => {
  const { items } = planPractice(task({ log: logOf({ number: 1, daysAgo: 1, loops: loops(6, 104) }) }));
  // definition: 104 less one step of 8
  expect(items.find(({ number }) => number === 1)?.tempo?.fromBpm).toBe(96);
});

it('[CH32] what was not steady begins two steps below what was clean', () => {
  const records = [...loops(4, 96), ...loops(8, 104, 'stumble')];
  const { items } = planPractice(task({ log: logOf({ number: 1, daysAgo: 0, loops: records }) }));
  // definition: 96 less two steps of 8
  expect(items.find(({ number }) => number === 1)?.tempo?.fromBpm).toBe(80);
});

it('[CH13] a plan can be played hands-free: its exercises in order, each from where the plan says', () => {
  const plan = planPractice(task({ log: logOf({ number: 1, daysAgo: 9, loops: loops(6, 104) }) }));
  const items = handsFreeItems(plan, [swing, funk]);
  const exercises = plan.items.filter(({ exercise }) => exercise !== null);
  expect(items.map(({ name, fromBpm }) => [name, fromBpm])).toEqual(
    exercises.map(({ title, tempo }) => ['name' in title && title.name, tempo?.fromBpm]),
  );
  expect(items[0]?.ladder).toMatchObject({ startBpm: 72, goalBpm: 120, stepBpm: 8 });
});

it('[CH26] what fills less than the minutes says that it is enough', () => {
  const long = planPractice(task({ minutes: 90 }));
  expect(long.notes).toEqual([{ fact: 'enough-today' }]);
  expect(long.minutes).toBeLessThan(90);
});

it('[CH26] no time and no lessons are said kindly', () => {
  expect(planPractice(task({ minutes: 0 }))).toMatchObject({
    items: [],
    notes: [{ fact: 'no-time-today' }],
  });
  expect(planPractice(task({ shelf: [] })).notes).toEqual([{ fact: 'no-lesson-yet' }]);
  expect(() => planPractice(task({ minutes: Number.NaN }))).toThrow('minutes is not a number');
});
