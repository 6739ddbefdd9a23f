import { expect, it } from 'vitest';
import { movedChapter, withChapter, withoutChapter } from './chapters.ts';

const chapters = ['a', 'b', 'c'].map((lesson) => ({ lesson, title: null }));
const names = (list: readonly { readonly lesson: string }[]) => list.map(({ lesson }) => lesson).join('');

it('[ST5200] chapters change places, go out and come back where they were', () => {
  expect(names(movedChapter(chapters, 2, 0))).toBe('cab');
  expect(names(movedChapter(chapters, 0, 1))).toBe('bac');
  expect([movedChapter(chapters, 0, -1), movedChapter(chapters, 2, 3)]).toEqual([chapters, chapters]);
  const [, second] = chapters;
  expect(names(withoutChapter(chapters, 1))).toBe('ac');
  expect(names(withChapter(withoutChapter(chapters, 1), 1, second as (typeof chapters)[0]))).toBe('abc');
});
