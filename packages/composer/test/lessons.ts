/** Lessons that the composer's tests share: grooves of common practice, written for the tests. */
import { type Exercise, type Lesson, parseLesson, parsePattern } from '@shedbook/core';

const SWING_GROOVE = `feel: triplet
tempo: { start: 80, goal: 140 }
groove: { ride: x x.x x x.x, hihat-foot: . x . x, bass: x x x x }`;

const TEXTS = {
  swing: `${SWING_GROOVE}\nvocabulary: [..., x.., ..x, x.x]`,
  'swing of three cells': `${SWING_GROOVE}\nvocabulary: [x.., ..x, x.x]`,
  'swing of five cells': `${SWING_GROOVE}\nvocabulary: [..., x.., .x., ..x, x.x]`,
  'swing of eight cells': `${SWING_GROOVE}\nvocabulary: [..., x.., .x., ..x, xx., x.x, .xx, xxx]`,
  waltz: `meter: 3/4
feel: triplet
groove: { ride: x x.x x, hihat-foot: . x ., bass: x . . }
vocabulary: [..., x.., ..x, x.x]`,
  shuffle: `meter: 12/8
groove: { ride: x.x x.x x.x x.x, hihat-foot: . x . x, bass: x . x . }
vocabulary: [..., x.., ..x, x.x, .xx]`,
  bossa: `feel: even
tempo: 112
comping: sidestick
groove: { hihat: xx xx xx xx, hihat-foot: . x . x, bass: x. .x x. .x }
vocabulary: [.., x., .x, xx]`,
  sixteenths: `feel: even
tempo: 72
groove: { hihat: x.x. x.x. x.x. x.x., bass: x . x . }
vocabulary: [...., x..., ..x., ...x, x..x, .x..]`,
  funk: `feel: even
tempo: 72
groove: { hihat: x.x. x.x. x.x. x.x., bass: x... ..x. x... ..x. }
vocabulary: [...., .g.., ...g, .g.g, ..g., X..., X..g, X.g.]
compose:
  limits:
    beats:
      1: [...., .g.., ...g, .g.g, ..g.]
      2: [X..., X..g, X.g.]
      3: [...., .g.., ...g, .g.g, ..g.]
      4: [X..., X..g, X.g.]`,
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
