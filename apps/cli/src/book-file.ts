/** Book files on disk, with the lessons that they name. */
import { dirname, join } from 'node:path';
import { type Book, type Lesson, type LessonProblem, parseBook } from '@shedbook/core';
import { type LessonFile, readLessonFile } from './lesson-file.ts';
import { readTextFile } from './text-file.ts';

/** A book file, read and parsed. */
export interface BookFile {
  readonly path: string;
  /** Null when there is an error among the problems of the book. */
  readonly book: Book | null;
  /** Those that could be read, by the paths that the book has. */
  readonly lessons: ReadonlyMap<string, Lesson>;
  /** The texts of those, by the same paths. */
  readonly texts: ReadonlyMap<string, string>;
  /** Those of the book, then those of its lessons, each in its file. */
  readonly problems: readonly LessonProblem[];
}

/**
 * Reads a book file and the lessons that it names.
 * @throws InputError when one of these files cannot be read.
 */
export async function readBookFile(path: string): Promise<BookFile> {
  const text = await readTextFile(path, (expected) => expected.book);
  const named = new Set(parseBook(text, path).book?.chapters.map((chapter) => chapter.path));
  // One after the other: a program may have only so many files open.
  const files: { readonly name: string; readonly file: LessonFile }[] = [];
  for (const name of named) files.push({ name, file: await readLessonFile(join(dirname(path), name)) });
  const lessons = new Map(files.flatMap(({ name, file }) => (file.lesson ? [[name, file.lesson]] : [])));
  const texts = new Map(files.map(({ name, file }) => [name, file.text]));
  const { book, problems } = parseBook(text, path, lessons);
  return {
    path,
    book,
    lessons,
    texts,
    problems: [...problems, ...files.flatMap(({ file }) => file.problems)],
  };
}
