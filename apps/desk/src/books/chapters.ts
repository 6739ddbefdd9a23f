/** Changing the order of a book's chapters, and which there are. */
import type { WrittenBook } from '@shedbook/routes';

/** A lesson of a book. */
export type BookChapter = WrittenBook['chapters'][number];

/** The chapters with the one at a place moved to another; as they are where there is no such place. */
export function movedChapter(
  chapters: readonly BookChapter[],
  from: number,
  to: number,
): readonly BookChapter[] {
  const moving = chapters[from];
  if (!moving || to < 0 || to >= chapters.length) return chapters;
  return chapters.toSpliced(from, 1).toSpliced(to, 0, moving);
}

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
