import { EMPTY_LOG, passEntry } from '@shedbook/coach';
import { Bpm, exerciseKey, type PracticeEntry, parseLesson, Seconds } from '@shedbook/core';
import type { SentTake } from '@shedbook/routes';
import { expect, it } from 'vitest';
import { diaryOf } from './diary.ts';

const { lesson } = parseLesson(
  'title: Slow twelve\nmeter: 12/8\nexercises:\n  - xxx x.x x.. ...\n',
  'lesson',
);
if (!lesson?.exercises[0]) throw new Error('the lesson has problems');
const key = exerciseKey(lesson.exercises[0]);
const shelf = [{ id: 'twelve', lesson }];

function played(id: string, startedAt: string, more: Partial<PracticeEntry>): PracticeEntry {
  return {
    ...{ id, device: 'phone', startedAt, durationSeconds: Seconds(90), lesson: 'twelve', exercise: key },
    ...{ form: 'loop', heardBy: 'ear', loops: [] },
    ...more,
  };
}

const loop = (bpm: number, verdict: 'clean' | 'loose' | 'unheard') => ({
  bpm: Bpm(bpm),
  verdict,
  faults: [],
});

it('[ST1601] tells day by day what was played, heard, said, passed and sent, each apart', () => {
  // the student's own day: late in the evening in New York it is tomorrow in UTC
  const evening = '2026-11-25T23:30:00-05:00';
  const entries = [
    played('1', '2026-11-23T18:00:00+01:00', { exercise: null, loops: [loop(90, 'unheard')] }),
    played('2', evening, { loops: [loop(90, 'clean'), loop(120, 'loose')] }),
    played('3', evening, { loops: [loop(105, 'clean'), loop(100, 'unheard')] }),
    played('4', evening, { heardBy: 'student', loops: [loop(120, 'clean')] }),
    passEntry({
      id: 'teacher 1',
      startedAt: '2026-11-26T10:00:00+01:00',
      lesson: 'twelve',
      exercise: key,
      bpm: Bpm(90),
    }),
  ];
  const take = { facts: { startedAt: evening }, answer: 'Lighter.' } as SentTake;
  const days = diaryOf(shelf, { ...EMPTY_LOG, entries }, [take]);
  expect(days.map(({ day, minutes, takes }) => [day, minutes, takes.length])).toEqual([
    ['2026-11-26', 0, 0],
    ['2026-11-25', 5, 1],
    ['2026-11-23', 2, 0],
  ]);
  const [, evenings, groove] = days;
  // definition: 12/8 is counted in dotted quarters, so 105 quarters a minute are 70
  expect(evenings?.pieces).toMatchObject([
    { heardBy: 'ear', rounds: 3, clean: 2, bpm: 70 },
    { heardBy: 'student', rounds: 1, clean: 1, bpm: 80 },
  ]);
  expect(days[0]?.pieces).toMatchObject([{ heardBy: 'teacher', bpm: 60 }]);
  expect(groove?.pieces).toMatchObject([{ exercise: 'Slow twelve', isGroove: true, rounds: 0 }]);
});

it('[ST1601] names what is gone from the desk as gone, and has no day where nothing was', () => {
  const entries = [
    played('1', '2026-11-23T18:00:00+01:00', { lesson: 'thrown away', loops: [loop(90, 'clean')] }),
  ];
  const [day] = diaryOf([], { ...EMPTY_LOG, entries }, []);
  expect(day?.pieces).toMatchObject([{ exercise: null, rounds: 1, clean: 1, bpm: 90 }]);
  expect(diaryOf(shelf, EMPTY_LOG, [])).toEqual([]);
});
