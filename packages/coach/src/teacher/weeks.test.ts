import { Bpm } from '@shedbook/core';
import { expect, it } from 'vitest';
import { swing } from '../../../../internal/testing/loops.ts';
import { entryOf, keyOf, logOf, loops, NOW, TODAY } from '../../test/students.ts';
import { addEntry } from '../log/merge.ts';
import { logOfRows } from '../log/rows.ts';
import { formatDay } from '../time/moment.ts';
import { passEntry } from './pass.ts';
import { passedSince, practiceWeeks } from './weeks.ts';

const HEARD = logOf(
  { number: 1, daysAgo: 0, loops: loops(4, 80) },
  { number: 2, daysAgo: 0, loops: loops(4, 80) },
  { number: 1, daysAgo: 6, loops: loops(4, 80) },
  { number: 1, daysAgo: 7, loops: loops(4, 72) },
);

function pass(bpm: number, daysAgo: number, number = 1) {
  return passEntry({
    ...{ id: `teacher ${bpm} ${daysAgo}`, startedAt: `${formatDay(TODAY - daysAgo)}T10:00:00Z` },
    ...{ lesson: swing.id, exercise: keyOf(swing, number), bpm: Bpm(bpm) },
  });
}

it('[CH3002] counts days and minutes week by week, the last week ending today; a pass is no playing', () => {
  const log = addEntry(HEARD, pass(120, 1));
  // definition: every stretch is of five minutes; seven days end today, so six days ago is in them and seven is not
  expect(practiceWeeks(log, NOW, 3)).toEqual([
    { from: formatDay(TODAY - 20), to: formatDay(TODAY - 14), days: 0, minutes: 0 },
    { from: formatDay(TODAY - 13), to: formatDay(TODAY - 7), days: 1, minutes: 5 },
    { from: formatDay(TODAY - 6), to: formatDay(TODAY), days: 2, minutes: 15 },
  ]);
});

it('[CH3002] tells what was passed since a day, each exercise once with its fastest', () => {
  const log = [pass(88, 9), pass(96, 3), pass(80, 2), pass(72, 30, 2)].reduce(addEntry, HEARD);
  const passed = passedSince({ shelf: [swing], log }, formatDay(TODAY - 9));
  expect(passed.map(({ exercise, bpm, day }) => [exercise.exercise.number, bpm, day])).toEqual([
    [1, 96, formatDay(TODAY - 2)],
  ]);
});

it('[CH3003] rows make one log whatever their order; what cannot be read costs itself alone', () => {
  const row = (value: unknown, more = {}) => {
    return { version: 1, text: JSON.stringify(value), isSound: true, ...more };
  };
  const [first, second] = [1, 2].map((number) => entryOf({ number, daysAgo: 1, loops: loops(4, 80) }));
  const rows = [
    ...[row(first), row(second), row({ removed: second?.id }), row({ of: first?.id, report: {} })],
    ...[row(first, { isSound: false }), row(first, { version: 9 }), { ...row(null), text: '{ half' }],
  ];
  expect(logOfRows(rows).entries).toEqual([first]);
  expect(logOfRows(rows.toReversed()).entries).toEqual([first]);
});
