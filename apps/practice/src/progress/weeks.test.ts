import { Bpm, type PracticeEntry, Seconds } from '@shedbook/core';
import { expect, it } from 'vitest';
import { HEARING_LESSON, lessonOf } from '../../../../internal/testing/hearing.ts';
import { evennessByWeek, mondayOf, tempoByWeek, weekOf } from './weeks.ts';

const lesson = lessonOf(HEARING_LESSON);

function entry(
  startedAt: string,
  heardBy: 'ear' | 'student',
  rounds: readonly (readonly [number, 'clean' | 'loose' | 'unheard'])[],
): PracticeEntry {
  const loops = rounds.map(([bpm, verdict]) => ({ bpm: Bpm(bpm), verdict, faults: [] }));
  return {
    ...{ id: startedAt, device: 'd', startedAt, durationSeconds: Seconds(60), lesson: 'hearing' },
    ...{ exercise: 'x', form: 'loop', heardBy, loops },
  };
}

it('[ST151] a week begins on Monday, in the student\u2019s own time', () => {
  // definition: 23 November 2026 is a Monday
  expect(weekOf('2026-11-22T23:30:00+01:00')).toBe((weekOf('2026-11-23T00:30:00+01:00') ?? 0) - 1);
  expect(
    mondayOf(weekOf('2026-11-29T12:00:00+01:00') ?? 0)
      .toISOString()
      .slice(0, 10),
  ).toBe('2026-11-23');
  expect(weekOf('soon')).toBeNull();
});

it('[ST151] the tempo that held is the fastest at which half of at least two rounds were clean', () => {
  const first = entry('2026-11-02T18:00:00+01:00', 'ear', [
    [100, 'clean'],
    [100, 'loose'],
    [110, 'clean'],
    [110, 'loose'],
    [110, 'loose'],
    [120, 'clean'],
  ]);
  const said = entry('2026-11-10T18:00:00+01:00', 'student', [
    [120, 'clean'],
    [120, 'clean'],
  ]);
  const unheard = entry('2026-11-17T18:00:00+01:00', 'ear', [
    [130, 'unheard'],
    [130, 'unheard'],
  ]);
  expect(tempoByWeek([first, said, unheard]).map(({ value, isHeard }) => [value, isHeard])).toEqual([
    [100, true],
    [120, false],
  ]);
});

it('[ST151] the evenness of a limb is the median of the rounds of all its voices', () => {
  const stretch = (startedAt: string, snare: readonly number[], ride: readonly number[]) => ({
    ...{ id: startedAt, startedAt, lesson: 'hearing', exercise: 'x', spreadsMs: { snare, ride } },
  });
  const all = [
    stretch('2026-11-02T18:00:00+01:00', [30, 20], [9]),
    stretch('2026-11-03T18:00:00+01:00', [25], [11]),
    stretch('2026-11-10T18:00:00+01:00', [12], []),
  ];
  expect(evennessByWeek(all, lesson, 'other hand').map(({ value }) => value)).toEqual([25, 12]);
  expect(evennessByWeek(all, lesson, 'lead hand').map(({ value }) => value)).toEqual([10]);
});
