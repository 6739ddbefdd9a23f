/** Changing the order of a book's chapters, which there are, and which sections of a lesson one has. */
import type { Lesson } from '@shedbook/core';
import type { WrittenBook } from '@shedbook/routes';

/** A lesson of a book. */
export type BookChapter = WrittenBook['chapters'][number];

/** The chapters without the one at a place. */
export function withoutChapter(chapters: readonly BookChapter[], at: number): readonly BookChapter[] {
  return chapters.filter((_, index) => index !== at);
}

/** The chapters with one more at a place. */
export function withChapter(
  chapters: readonly BookChapter[],
  at: number,
  chapter: BookChapter,
): readonly BookChapter[] {
  return chapters.toSpliced(at, 0, chapter);
}

/** How a book names each section of a lesson: by its heading, or by its number from 1 where another is called the same. */
export function sectionNames(sections: readonly Pick<Lesson, 'heading'>[]): readonly (string | number)[] {
  const plain = sections.map(({ heading }) => heading?.trim().toLowerCase() ?? '');
  const isOwn = (heading: string, index: number) => heading !== '' && plain.indexOf(heading) === index;
  return sections.map(({ heading }, index) =>
    isOwn(plain[index] ?? '', index) ? (heading ?? '') : index + 1,
  );
}

/** The sections of a chapter with one more or less, in the order of the lesson; null for all, and never none. */
export function chosenSections(
  names: readonly (string | number)[],
  chosen: readonly (string | number)[],
  name: string | number,
  isOn: boolean,
): BookChapter['sections'] {
  const left = names.filter((each) => (each === name ? isOn : chosen.includes(each)));
  if (left.length === 0) return [name];
  return left.length === names.length ? null : left;
}
