import { Bpm } from '@shedbook/core';
import { expect, it } from 'vitest';
import { swing } from '../../../../internal/testing/loops.ts';
import { keyOf, logOf, loops, NOW, TODAY } from '../../test/students.ts';
import { addEntry } from '../log/merge.ts';
import { printPracticeLog } from '../log/print-log.ts';
import { parsePracticeLog } from '../log/read-log.ts';
import { formatDay } from '../time/moment.ts';
import { passEntry } from './pass.ts';
import { summariseStudent } from './summary.ts';

const GOAL = swing.lesson.tempo.goalBpm;
const POOR = [5, 4, 3].map((daysAgo) => ({ number: 1, daysAgo, loops: loops(10, GOAL, 'stumble') }));

function standing(log: ReturnType<typeof logOf>): string {
  const summary = summariseStudent({ name: 'Bram', shelf: [swing], log, assignments: [] }, NOW);
  const lists = { firm: summary.firm, shaky: summary.shaky, learning: summary.learning };
  const found = Object.entries(lists).find(([, all]) => all.some(({ exercise }) => exercise.number === 1));
  return found?.[0] ?? 'none';
}

const PASS = passEntry({
  id: 'pass 1',
  startedAt: `${formatDay(TODAY - 2)}T18:00:00Z`,
  lesson: swing.id,
  exercise: keyOf(swing, 1),
  bpm: Bpm(GOAL),
});

it('[CH700] what the teacher passes holds, whatever was heard before or said that day', () => {
  expect(standing(logOf(...POOR))).not.toBe('firm');
  expect(standing(addEntry(logOf(...POOR), PASS))).toBe('firm');
  const sameDay = logOf(...POOR, { number: 1, daysAgo: 2, loops: loops(10, GOAL, 'stumble') });
  expect(standing(addEntry(sameDay, PASS))).toBe('firm');
});

it('[CH700] what is heard after the teacher passed it counts again', () => {
  const after = logOf({ number: 1, daysAgo: 1, loops: loops(12, GOAL, 'stumble') });
  expect(standing(addEntry(after, PASS))).toBe('shaky');
});

it('[CH700] whoever was passed has not played for that', () => {
  const log = addEntry(logOf(...POOR), PASS);
  expect(summariseStudent({ name: 'Bram', shelf: [swing], log, assignments: [] }, NOW).lastDay).toBe(
    TODAY - 3,
  );
});

it('[CH700] a pass is an entry of a log like any other', () => {
  const log = addEntry(logOf(...POOR), PASS);
  expect(parsePracticeLog(printPracticeLog(log), 'log.json').log).toEqual(log);
});
