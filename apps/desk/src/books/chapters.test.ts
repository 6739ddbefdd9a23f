import { expect, it } from 'vitest';
import { withTurn } from '../shared/with-turn.ts';
import { chosenSections, sectionNames, withChapter, withoutChapter } from './chapters.ts';

const chapters = ['a', 'b', 'c'].map((lesson) => ({ lesson, title: null }));
const names = (list: readonly { readonly lesson: string }[]) => list.map(({ lesson }) => lesson).join('');

it('[ST5200] chapters change places, go out and come back where they were', () => {
  expect(names(withTurn(chapters, 2, -1))).toBe('acb');
  expect(names(withTurn(chapters, 0, 1))).toBe('bac');
  expect([withTurn(chapters, 0, -1), withTurn(chapters, 2, 1)]).toEqual([chapters, chapters]);
  const [, second] = chapters;
  expect(names(withoutChapter(chapters, 1))).toBe('ac');
  expect(names(withChapter(withoutChapter(chapters, 1), 1, second as (typeof chapters)[0]))).toBe('abc');
});

it('[ST6204] a chapter has some sections in the order of the lesson, by heading or number, all or at least one', () => {
  const names = sectionNames([
    { heading: 'Feet' },
    { heading: null },
    { heading: 'Hands' },
    { heading: 'feet ' },
  ]);
  expect(names).toEqual(['Feet', 2, 'Hands', 4]);
  const without = chosenSections(names, names, 2, false);
  expect(without).toEqual(['Feet', 'Hands', 4]);
  expect(chosenSections(names, ['Hands'], 'Feet', true)).toEqual(['Feet', 'Hands']);
  expect(chosenSections(names, without ?? [], 2, true)).toBeNull();
  expect(chosenSections(names, ['Hands'], 'Hands', false)).toEqual(['Hands']);
});
