/** Lessons that the composer's tests share: grooves of common practice, written for the tests. */
import { type Exercise, type Lesson, parseLesson, parsePattern } from '@shedbook/core';
import { COMPOSED_LESSONS } from '../../../internal/testing/composed-lessons.data.mjs';

const SWING_GROOVE = `feel: triplet
tempo: { start: 80, goal: 140 }
groove: { ride: x x.x x x.x, hihat-foot: . x . x, bass: x x x x }`;

const TEXTS = {
  swing: `${SWING_GROOVE}\nvocabulary: [..., x.., ..x, x.x]`,
  'swing of three cells': `${SWING_GROOVE}\nvocabulary: [x.., ..x, x.x]`,
  'swing of five cells': `${SWING_GROOVE}\nvocabulary: [..., x.., .x., ..x, x.x]`,
  'swing of eight cells': `${SWING_GROOVE}\nvocabulary: [..., x.., .x., ..x, xx., x.x, .xx, xxx]`,
  ...COMPOSED_LESSONS,
} as const;

/** Name of a lesson that tests share. */
export type LessonName = keyof typeof TEXTS;

/** A lesson from its text; the title is added. */
export function lessonFrom(text: string): Lesson {
  const { lesson, problems } = parseLesson(`title: Test\n${text}\n`, 'test.lesson.yaml');
  if (!lesson) throw new Error(JSON.stringify(problems));
  return lesson;
}

/** A shared lesson, with lines added to its text. */
export function lessonOf(name: LessonName, more = ''): Lesson {
  return lessonFrom(`${TEXTS[name]}\n${more}`);
}

/** A lesson with no groove at all: a rhythm by itself. */
export function withoutGroove(lesson: Lesson): Lesson {
  return { ...lesson, groove: [] };
}

/** An exercise for the lesson's comping voice. */
export function exerciseOf(lesson: Lesson, text: string, number = 1): Exercise {
  const parts = [{ voice: lesson.comping, pattern: parsePattern(text) }];
  return { number, name: null, parts, sticking: null, notes: null };
}
