import { expect, it } from 'vitest';
import { inEnglish } from '../../../../internal/testing/in-english.ts';
import { read } from '../../test/reading.ts';
import { chapterLesson, isBookFile, parseBook } from './book.ts';

const DIVIDED = read(`title: Limbs
sections:
  - {heading: Ride, exercises: [x x x x, x . x .]}
  - {heading: Feet, exercises: [. x . x]}
`);

const lessons = new Map([
  ['limbs.lesson.yaml', DIVIDED],
  ['whole.lesson.yaml', read('title: Whole\nexercises: [x x x x]\n')],
]);

const wrongIn = (text: string) => parseBook(text, 'a.book.yaml', lessons).problems.map(inEnglish);

it('[LE381] a book lists lessons, whole or in part, and what is printed round them', () => {
  const { book, problems } = parseBook(
    `title: A book
lessons:
  - whole.lesson.yaml
  - {lesson: limbs.lesson.yaml, title: Only feet, sections: [feet, 1]}
twoSided: false
`,
    'a.book.yaml',
    lessons,
  );
  expect(problems).toEqual([]);
  expect(book).toMatchObject({ title: 'A book', by: null, paper: null, twoSided: false, contents: true });
  const [first, second] = (book?.chapters ?? []).map((chapter) =>
    chapterLesson(chapter, lessons.get(chapter.path) as typeof DIVIDED),
  );
  expect(first).toEqual(lessons.get('whole.lesson.yaml'));
  expect(second?.title).toBe('Only feet');
  expect(second?.sections.map(({ heading }) => heading)).toEqual(['Feet', 'Ride']);
  expect(second?.exercises.map(({ number }) => number)).toEqual([3, 1, 2]);
  expect(['a.book.yaml', 'A.BOOK.YML', 'a.lesson.yaml', 'book.yaml'].map(isBookFile)).toEqual([
    true,
    true,
    false,
    false,
  ]);
});

it('[LE381] what is wrong with a book is told at its place', () => {
  expect(wrongIn('title: A\nlessons: []\n')).toEqual([
    'a.book.yaml:2:10: error: lessons: found an empty list, expected a list of lesson files',
  ]);
  expect(wrongIn('title: A\nlesons: [whole.lesson.yaml]\n')[1]).toContain('did you mean "lessons"?');
  expect(wrongIn('title: A\nlessons:\n  - {lesson: limbs.lesson.yaml, sections: [Fett]}\n')).toEqual([
    expect.stringMatching(/^a\.book\.yaml:3:44: error: .*found "Fett", expected one of Ride, Feet.*"Feet"/),
  ]);
  expect(wrongIn('title: A\nlessons:\n  - {lesson: whole.lesson.yaml, sections: [1]}\n')[0]).toContain(
    'expected no sections, since this lesson is not divided',
  );
  expect(wrongIn('title: [\n')).toHaveLength(1);
});
