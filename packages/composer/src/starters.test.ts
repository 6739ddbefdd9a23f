import { parseLesson, STARTER_NAMES, starterText, styleOf } from '@shedbook/core';
import { expect, it } from 'vitest';
import { compose } from './compose.ts';

it.each(STARTER_NAMES)(
  '[CO420] [CO3405] %s is a sound start: nothing to warn of, and a page comes of it',
  (name) => {
    const { lesson, problems } = parseLesson(starterText(name, 'A start'), 'start');
    expect(problems).toEqual([]);
    if (!lesson) throw new Error('no lesson');
    const { exercises, report } = compose(lesson);
    // definition: as many as the lesson asks for, no two alike, easiest first
    expect(exercises).toHaveLength(lesson.compose.count);
    expect(new Set(exercises.map((each) => JSON.stringify(each.parts))).size).toBe(exercises.length);
    // definition: every move that a page of this many bars can meet, and nothing easier than what it follows
    expect(report.coverage.met).toBe(report.coverage.bestPossible);
    expect(report.difficulty.falls).toEqual([]);
    // common practice: a first page is made of figures that are stated and varied
    expect(report.blocks.every(({ theme }) => theme !== null)).toBe(true);
    expect(report.notes.map((note) => note.fact)).not.toContain('no-themes');
  },
);

it('[CO420] the starts stand on every shelf of styles', () => {
  const styles = STARTER_NAMES.map((name) => parseLesson(starterText(name, 'A start'), 'start').lesson);
  // common practice: what a teacher files these under
  expect(styles.map((lesson) => lesson && styleOf(lesson))).toEqual([
    'swing',
    'waltz',
    'swing',
    'eighths',
    'sixteenths',
    'eighths',
    'sixteenths',
    'compound',
    'compound',
    'swing',
  ]);
});
