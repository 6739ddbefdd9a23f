import { readMoment } from '@shedbook/coach';
import { Bpm, exerciseKey, type PracticeLog, Seconds } from '@shedbook/core';
import { momentFrom } from '@shedbook/stand';
import { describe, expect, it } from 'vitest';
import { HEARING_LESSON, lessonOf } from '../../../../internal/testing/hearing.ts';
import { logRows } from './log-rows.ts';

const lesson = lessonOf(HEARING_LESSON);

describe('moments of the log', () => {
  it('[ST89] are local time with the offset, and name the same instant', () => {
    const date = new Date('2026-11-25T17:30:00Z');
    // standard: ISO 8601-1:2019, time shift
    expect(momentFrom(date, 60)).toBe('2026-11-25T18:30:00+01:00');
    expect(momentFrom(date, -210)).toBe('2026-11-25T14:00:00-03:30');
    expect(momentFrom(date, 0)).toBe('2026-11-25T17:30:00+00:00');
    for (const offset of [-720, -210, 0, 60, 345, 840]) {
      expect(readMoment(momentFrom(date, offset))?.instantSeconds).toBe(date.getTime() / 1000);
    }
  });
});

describe('the log as a table', () => {
  it('[ST87] knows an exercise by its pattern, whatever its number is today, and keeps what was heard from what was said', () => {
    const [first, second] = lesson.exercises;
    if (!first || !second) throw new Error('no exercises');
    const entry = (exercise: string | null, bpm: number, verdict: 'clean' | 'loose') => ({
      id: `${exercise} ${bpm} ${verdict}`,
      device: 'd',
      startedAt: '2026-11-25T18:30:00+01:00',
      durationSeconds: Seconds(60),
      lesson: 'hearing',
      exercise,
      form: 'loop',
      heardBy: 'ear' as const,
      loops: [{ bpm: Bpm(bpm), verdict, faults: [] }],
    });
    const log: PracticeLog = {
      version: 1,
      removed: [],
      entries: [
        entry(exerciseKey(second), 160, 'clean'),
        entry(exerciseKey(second), 180, 'loose'),
        entry(null, 160, 'loose'),
        { ...entry(exerciseKey(second), 200, 'clean'), heardBy: 'student' },
        { ...entry(exerciseKey(second), 240, 'clean'), form: 'cell alone' },
        { ...entry(exerciseKey(first), 160, 'clean'), lesson: 'another' },
      ],
    };
    // The renewed sheet: the second exercise comes first.
    const renewed = {
      ...lesson,
      exercises: [
        { ...second, number: 1 },
        { ...first, number: 2 },
      ],
    };
    const rows = logRows(log, { id: 'hearing', lesson: renewed });
    expect(
      rows.map(({ number, seconds, heardBpm, saidBpm }) => [number, seconds, heardBpm, saidBpm]),
    ).toEqual([
      [1, 240, 160, 200],
      [null, 60, null, null],
    ]);
    expect(rows[0]?.tempi).toEqual([
      { bpm: Bpm(160), clean: 1, loops: 1 },
      { bpm: Bpm(180), clean: 0, loops: 1 },
      { bpm: Bpm(200), clean: 1, loops: 1 },
    ]);
  });
});
