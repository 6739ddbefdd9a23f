import type { Lesson } from '@shedbook/core';
import { expect, it } from 'vitest';
import { hearStory, taskOf } from '../../../../internal/testing/stories/hear.mjs';
import { sheetNamed } from '../../../../internal/testing/stories/lessons.mjs';
import { type JudgeTask, judge } from '../index.ts';
import { adviceOn } from '../verdict/advice.ts';

const FORM = {
  name: 'loop',
  sections: [{ play: 'pattern', bars: 4, ending: null } as const],
  repeat: 1,
  countInBars: 0,
};

/** What is said first of an exercise played with some changes. */
function saidOf(sheet: string, exercise: number, play: object) {
  const lesson = sheetNamed(sheet) as Lesson;
  const story = { exercise, level: 'intermediate', play: { spreadMs: 8, ...play } } as never;
  const asked = taskOf(lesson, FORM, story) as JudgeTask;
  const { task, verdict } = judge(asked, hearStory(lesson, FORM, story).take, 'intermediate');
  const { about } = verdict;
  return about[0] ? adviceOn(about[0], task) : null;
}

// common practice: what swings is the smallest value that the time is kept in
it('[JU7500] a feel is told of eighths or of sixteenths, whichever the page divides', () => {
  expect(saidOf('sixteenth-hats', 2, { swung: 'sixteenths' })).toEqual({ fact: 'do-straighten-sixteenths' });
  expect(saidOf('half-time-shuffle', 2, { straight: 'sixteenths' })).toEqual({ fact: 'do-swing-sixteenths' });
  expect(saidOf('bossa', 6, { swung: true })).toEqual({ fact: 'do-straighten' });
  expect(saidOf('first-swing', 13, { straight: true })).toEqual({ fact: 'do-swing' });
  expect(saidOf('sixteenth-hats', 2, {})).toBeNull();
});

// common practice: a hand that is late on the beat as well is late, however its sixteenths lie between the other limbs
it('[JU8100] a voice that is late on its own beats too is late, and swings nothing', () => {
  const said = saidOf('samba', 1, { lateMs: { ride: 45 } });
  expect(said).toMatchObject({ fact: 'do-wait-for', lead: 'ride' });
  expect(saidOf('samba', 1, { swung: 'sixteenths' })).toEqual({ fact: 'do-straighten-sixteenths' });
});
