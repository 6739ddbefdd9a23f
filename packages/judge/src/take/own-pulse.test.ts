import type { Lesson } from '@shedbook/core';
import { expect, it } from 'vitest';
import { hearStory, taskOf } from '../../../../internal/testing/stories/hear.mjs';
import { sheetNamed } from '../../../../internal/testing/stories/lessons.mjs';
import { type JudgeTask, judge } from '../index.ts';

const FORM = {
  name: 'loop',
  sections: [{ play: 'pattern', bars: 4, ending: null } as const],
  repeat: 1,
  countInBars: 0,
};

/** What is found in an exercise of a sheet whose lead is late by itself: who, and whether in some bars only. */
function foundOf(sheet: string, exercise: number) {
  const lesson = sheetNamed(sheet) as Lesson;
  const story = {
    ...{ exercise, level: 'intermediate', rounds: 2, name: `${sheet} ${exercise}` },
    play: { lateMs: { [lesson.lead]: 45 }, spreadMs: 8 },
  } as never;
  const { verdict } = judge(
    taskOf(lesson, FORM, story) as JudgeTask,
    hearStory(lesson, FORM, story).take,
    'intermediate',
  );
  return verdict.about.map(({ what, voice, rounds }) => ({ what, isLead: voice === lesson.lead, rounds }));
}

// common practice: the ride (or the hat) carries the time, and what does not meet it is early or late
it('[JU8101] the pulse goes through the lead in every round, be there ever so few strokes of the others', () => {
  const pages = [1, 2, 3, 4, 5, 6].map((exercise) => foundOf('jazz-waltz', exercise));
  const all = [...pages, foundOf('samba', 1)];
  expect(all.filter((found) => found.length === 0)).toEqual([]);
  expect(all.flat().filter(({ what, isLead, rounds }) => what !== 'early' || isLead || rounds)).toEqual([]);
});
