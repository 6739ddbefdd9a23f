import { Bpm, type LoopRecord, Seconds } from '@shedbook/core';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { funk, swing } from '../../../../internal/testing/loops.ts';
import { entryOf, keyOf, logOf, loops, MISSED_LET, NOW, type Played, TODAY } from '../../test/students.ts';
import { PART_KINDS } from '../apart/apart.ts';
import { addEntry } from '../log/merge.ts';
import { formatDay } from '../time/moment.ts';
import { handsFreeItems } from './hands-free-items.ts';
import { planPractice } from './plan.ts';
import type { PlanItem, PlanTask } from './plan-item.ts';
import { progressOf } from './progress.ts';

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

it('[CH26] a plan fills the minutes, in whole minutes', () => {
  fc.assert(
    fc.property(anyTask, (each) => {
      const plan = planPractice(each);
      const total = plan.items.reduce((sum, item) => sum + item.minutes, 0);
      expect(plan.minutes).toBe(total);
      expect(total).toBe(Math.max(0, Math.floor(each.minutes)));
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

it('[CH29] no exercise stands twice in a row, but for a part and the whole that it goes back into', () => {
  fc.assert(
    fc.property(anyTask, (each) => {
      const { items } = planPractice(each);
      items.forEach(({ lesson, exercise }, i) => {
        const before = items[i - 1];
        const isSame = exercise !== null && before?.lesson === lesson && before.exercise === exercise;
        if (isSame) expect(before.kind).toBe('apart');
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

it('[CH29] what is new is next on the sheet that was practised last, and comes also while much is on its way', () => {
  const one = planPractice(task({ log: logOf({ shelf: funk, number: 1, daysAgo: 1, loops: loops(8, 64) }) }));
  expect(one.items.find(({ kind }) => kind === 'new')).toMatchObject({ lesson: funk.id, number: 2 });
  const begun = [1, 2, 3, 4].map((number) => ({ number, daysAgo: 1, loops: loops(8, 80) }));
  const four = planPractice(task({ log: logOf(...begun) }));
  expect(four.items.find(({ kind }) => kind === 'new')).toMatchObject({ lesson: swing.id, number: 5 });
});

it('[CH29] a first day of twenty minutes has at least four different things', () => {
  const { items } = planPractice(task({ shelf: [swing], minutes: 20 }));
  const different = new Set(items.map(({ exercise, kind }) => exercise ?? kind));
  expect(different.size).toBeGreaterThanOrEqual(4);
});

it('[CH26] sixty minutes are filled, with breaks', () => {
  for (const shelf of [[swing, funk], [funk]]) {
    const { items } = planPractice(task({ shelf, minutes: 60 }));
    expect(items.reduce((sum, { minutes }) => sum + minutes, 0)).toBe(60);
    expect(kinds(items).filter((kind) => kind === 'break').length).toBeGreaterThanOrEqual(2);
  }
});

it('[CH30] in turns everything comes round once before anything comes again', () => {
  const due = [1, 2, 3].map((number) => ({ number, daysAgo: 40, loops: loops(12, 120) }));
  for (let seed = 0; seed < 30; seed += 1) {
    const { items } = planPractice(task({ log: logOf(...due), minutes: 60, seed }));
    const from = items.findIndex(({ kind }) => kind === 'once more');
    const first = items
      .slice(0, from)
      .flatMap(({ lesson, exercise }) => (exercise ? [`${lesson} ${exercise}`] : []));
    expect(new Set(first).size).toBe(first.length);
    for (const { number } of due) expect(first).toContain(`${swing.id} ${keyOf(swing, number)}`);
  }
});

it('[CH30] turns can be had as blocks instead', () => {
  const due = [1, 2, 3].map((number) => ({ number, daysAgo: 1, loops: loops(12, 80) }));
  const { items } = planPractice(
    task({ shelf: [swing], log: logOf(...due), minutes: 45, interleave: false }),
  );
  const exercises = items.flatMap(({ exercise }) => exercise ?? []);
  // definition: every exercise once, for as long as its turns
  expect(new Set(exercises).size).toBe(exercises.length);
});

it('[CH31] what was played today changes nothing of the plan: opened again it is the same, and ticked off', () => {
  const before = task({ shelf: [swing], minutes: 20 });
  const plan = planPractice(before);
  const visits = plan.items.filter(({ number }) => number !== null).slice(0, 2);
  const log = visits.reduce(
    (sum, { number, minutes }) =>
      addEntry(sum, {
        ...entryOf({ number: number as number, daysAgo: 0, loops: loops(9, 72) }),
        durationSeconds: Seconds(minutes * 60),
      }),
    before.log,
  );
  const later = planPractice({ ...before, log });
  expect(later).toEqual(plan);
  const done = progressOf(later, log, before.shelf).flatMap(({ isDone }, i) =>
    isDone ? [later.items[i]] : [],
  );
  expect(done.map((item) => item?.number)).toEqual(visits.map(({ number }) => number));
});

it('[CH43] time played is poured into the items in order, and a break is over when something after it was played', () => {
  const plan = planPractice(task({ shelf: [swing], minutes: 45 }));
  const at = plan.items.findIndex(({ kind }) => kind === 'break');
  const after = plan.items.findIndex((item, i) => i > at && item.number !== null && item.part === null);
  const { number, minutes } = plan.items[after] as PlanItem;
  const before = plan.items.slice(0, after).filter((item) => item.number === number && item.part === null);
  const seconds = (minutes + before.reduce((sum, item) => sum + item.minutes, 0)) * 60;
  const played = {
    ...entryOf({ number: number as number, daysAgo: 0, loops: [] }),
    durationSeconds: Seconds(seconds),
  };
  const progress = progressOf(plan, addEntry(logOf(), played), [swing]);
  expect(progress[after]).toEqual({ seconds: minutes * 60, isDone: true });
  expect(progress[at]?.isDone).toBe(true);
  expect(progress[0]).toEqual({ seconds: 0, isDone: false });
  // What was played on another day is not today's.
  const yesterday = { ...played, id: 'y', startedAt: `${formatDay(TODAY - 1)}T10:00:00Z` };
  expect(progressOf(plan, addEntry(logOf(), yesterday), [swing]).every(({ isDone }) => !isDone)).toBe(true);
});

/** The log of some days on which what is planned is played, all loops as they come out. */
function live(
  days: number,
  minutes: number,
  playedBy: (item: PlanItem, day: number) => readonly LoopRecord[],
) {
  const start = TODAY - days;
  const met = new Map<string, number[]>();
  let log = logOf();
  const plans = Array.from({ length: days }, (_, i) => {
    const day = start + i;
    const plan = planPractice(task({ shelf: [swing], log, minutes, now: `${formatDay(day)}T17:00:00Z` }));
    plan.items.forEach((item, index) => {
      if (item.exercise === null || item.number === null) return;
      const days = met.get(item.exercise) ?? [];
      if (days.at(-1) !== day) met.set(item.exercise, [...days, day]);
      const entry = entryOf({ number: item.number, daysAgo: TODAY - day, loops: playedBy(item, day) });
      log = addEntry(log, { ...entry, id: `${day} ${index}`, form: item.part?.kind ?? 'loop' });
    });
    return plan;
  });
  return { met, plans, log };
}

it('[CH44] a student who plays everything clean at the goal meets all of it again at growing distances', () => {
  const { met } = live(150, 20, () => loops(9, 120));
  expect(met.size).toBe(swing.lesson.exercises.length);
  for (const days of met.values()) {
    const gaps = days.slice(1).map((day, i) => day - (days[i] ?? 0));
    expect(gaps.length).toBeGreaterThanOrEqual(2);
    // A day that it was due on counts, however little before: gaps grow.
    gaps.slice(1).forEach((gap, i) => {
      expect(gap).toBeGreaterThanOrEqual(gaps[i] ?? 0);
    });
  }
});

it('[CH41] what stands still takes at most a third of the minutes, and the rest of the sheet moves on', () => {
  // the story: whoever stays at 104 of 120, on every exercise but the last two
  const stays = (item: PlanItem) =>
    [...loops(4, 104), ...loops(5, 112, 'loose', [MISSED_LET])].map((loop) =>
      (item.number ?? 0) > 4 ? { ...loop, bpm: Bpm(120), verdict: 'clean' as const, faults: [] } : loop,
    );
  const { met, plans } = live(56, 20, stays);
  expect(met.size).toBe(swing.lesson.exercises.length);
  const late = plans.slice(30);
  for (const { items, minutes } of late) {
    const apart = items.filter((item) => item.kind === 'apart' || item.reason.fact === 'put-back');
    expect(apart.reduce((sum, item) => sum + item.minutes, 0)).toBeLessThanOrEqual(minutes / 3);
  }
  // Every way of taking apart has its day, and the whole comes right after it.
  const ways = new Set(late.flatMap(({ items }) => items.flatMap(({ part }) => part?.kind ?? [])));
  expect([...ways].toSorted()).toEqual([...PART_KINDS].toSorted());
  for (const { items } of late) {
    items.forEach((item, i) => {
      if (item.kind === 'apart') expect(items[i + 1]).toMatchObject({ exercise: item.exercise, part: null });
    });
  }
  expect(late.some(({ notes }) => notes.some(({ fact }) => fact === 'taken-apart'))).toBe(true);
});

it('[CH32] every item says why, and where to begin', () => {
  const history = [
    { number: 1, daysAgo: 9, loops: [...loops(4, 88), ...loops(4, 96, 'loose', [MISSED_LET])] },
    { number: 2, daysAgo: 9, loops: loops(4, 80, 'stumble') },
  ];
  const { items } = planPractice(task({ log: logOf(...history) }));
  const first = items.find(({ kind, number }) => kind === 'review' && number === 1);
  expect(first).toMatchObject({
    tempo: { goalBpm: 120 },
    reason: {
      fact: 'listen-for',
      what: { fact: 'played-clean', day: -9, bpm: 88, goalBpm: 120 },
      sore: { limb: 'left hand', voice: 'snare', place: { fact: 'syllable', syllable: 'let', beat: 1 } },
    },
  });
  expect(items.find(({ kind, number }) => kind === 'review' && number === 2)).toMatchObject({
    tempo: { goalBpm: 120 },
    reason: { fact: 'played-shaky', day: -9 },
  });
});

function fromBpm(records: readonly LoopRecord[], daysAgo: number): number {
  const { items } = planPractice(task({ log: logOf({ number: 1, daysAgo, loops: records }) }));
  return items.find(({ number }) => number === 1)?.tempo?.fromBpm ?? Number.NaN;
}

it('[CH32] a visit begins where most loops were clean, lower the longer ago, and under the start where that failed', () => {
  const mixed = [...loops(4, 88), ...loops(4, 96), ...loops(3, 104, 'loose'), ...loops(1, 104)];
  const yesterday = fromBpm(mixed, 1);
  expect(yesterday).toBeGreaterThan(72);
  expect(yesterday).toBeLessThan(96);
  expect(fromBpm(mixed, 60)).toBeLessThan(yesterday);
  expect(fromBpm(loops(9, 72, 'stumble'), 1)).toBeLessThan(72);
  // definition: half of the start is the lowest rung, the goal the highest
  expect(fromBpm(loops(9, 36, 'stumble'), 1)).toBe(36);
  expect(fromBpm(loops(9, 200), 90)).toBe(120);
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

it('[CH26] no time and no lessons are said kindly', () => {
  expect(planPractice(task({ minutes: 0 }))).toMatchObject({
    items: [],
    notes: [{ fact: 'no-time-today' }],
  });
  expect(planPractice(task({ shelf: [] })).notes).toEqual([{ fact: 'no-lesson-yet' }]);
  expect(() => planPractice(task({ minutes: Number.NaN }))).toThrow('minutes is not a number');
});
