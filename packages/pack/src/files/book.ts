/** A printed book: the lessons of it as one PDF file. */
import { type Book, chapterLesson, type Lesson, type Paper } from '@shedbook/core';
import { type Engraver, type Fonts, layOutBook, writePdf } from '@shedbook/engrave';
import { type LanguageTag, SHEET_WORDS } from '@shedbook/words';
import type { LessonMedia } from '../media/lesson-media.ts';
import type { LessonFile } from './file.ts';
import { printedMedia } from './printed-media.ts';

/** What a book is printed with. */
export interface BookRequest {
  readonly engraver: Engraver;
  readonly fonts: Fonts;
  /** The language that it prints. */
  readonly language: LanguageTag;
  /** The files that a lesson shows, by the path of the lesson; named where left out. */
  readonly media?: ReadonlyMap<string, LessonMedia>;
  /** The paper that was asked for; that of the book, else of its first lesson, when left out. */
  readonly paper?: Paper;
}

/** The file that is printed, and how many pages it has. */
export interface PrintedBook extends LessonFile<'sheet'> {
  /** Number of its pages. */
  readonly pages: number;
}

/**
 * Prints a book.
 * @param lessons those of its chapters, by their paths
 * @throws RangeError where a chapter has no lesson: check it first.
 */
export async function printBook(
  book: Book,
  lessons: ReadonlyMap<string, Lesson>,
  { engraver, fonts, language, paper, media }: BookRequest,
): Promise<PrintedBook> {
  const chapters = book.chapters.map((chapter) => {
    const lesson = lessons.get(chapter.path);
    if (!lesson) throw new RangeError(`Internal error: no lesson ${chapter.path}`);
    const shown = printedMedia(lesson, media?.get(chapter.path) ?? new Map());
    return { lesson: chapterLesson(chapter, lesson), shown };
  });
  const lessonsOf = chapters.map(({ lesson }) => lesson);
  const mediaBy = new Map(chapters.map(({ lesson, shown }) => [lesson, shown]));
  const mediaOf = (lesson: Lesson) => mediaBy.get(lesson) ?? new Map();
  const size = paper ?? book.paper ?? lessonsOf[0]?.sheet.paper ?? 'A4';
  const words = SHEET_WORDS[language];
  const { pages, outline } = layOutBook(
    { ...book, lessons: lessonsOf, paper: size, mediaOf },
    { engraver, fonts, words },
  );
  const content = await writePdf(pages, fonts, { title: book.title, author: book.by, language, outline });
  return { path: 'book.pdf', kind: 'sheet', exercise: null, content, pages: pages.length };
}
