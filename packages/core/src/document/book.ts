/**
 * Books: lessons one after another, some of them in part, printed as one.
 *
 * Conventions: a book is a YAML file whose name ends in `.book.yaml`; paths of lessons are relative to it. A section is
 * named by its number in its lesson, from 1, or by its heading.
 */
import { LineCounter, parseDocument } from 'yaml';
import * as z from 'zod/mini';
import { expecting } from '../lesson/expecting.ts';
import { type Lesson, PAPERS, type Paper } from '../lesson/lesson.ts';
import { sectionNamed, sectionsOf } from '../lesson/section.ts';
import { didYouMean, quoted } from '../lesson/value-fact.ts';
import type { Report } from './fault.ts';
import { LONGEST, list, MOST, map, named, oneOf, text, whole, yesNo } from './fields.ts';
import { createLocator } from './locate.ts';
import { nearest } from './nearest.ts';
import { type LessonProblem, lengthProblems, locate, valueProblems } from './parse.ts';
import { MOST_PROBLEMS } from './problem.ts';
import { shape } from './shape.ts';
import { yamlProblems } from './yaml-problems.ts';

const sectionName = z.union([whole(1, MOST.exercises, 'section-in-range'), text('a-section-name')], {
  error: named('a-section-name'),
});

const chapter = z.union(
  [
    text('a-lesson-file'),
    z.strictObject(
      {
        lesson: text('a-lesson-file').check(z.describe('its file, by a path from that of the book')),
        title: z
          .optional(text('a-title'))
          .check(z.describe('printed over it; the title of the lesson when left out')),
        sections: z
          .optional(list(sectionName, 'section-names', MOST.few))
          .check(z.describe('which of its sections, by number or heading, in this order; all when left out')),
      },
      { error: map('a-chapter') },
    ),
  ],
  { error: named('a-chapter') },
);

/** Schema of a book as written. */
export const bookSchema = z.strictObject(
  {
    title: text('a-title').check(z.describe('printed on the title page')),
    by: z.optional(text('a-name')).check(z.describe('who wrote it')),
    text: z
      .optional(text('a-text', LONGEST.text))
      .check(z.describe('what there is to say before it begins, in small Markdown')),
    lessons: z
      .array(z.optional(chapter), { error: named('chapters') })
      .check(
        z.maxLength(MOST.cells, { error: expecting({ fact: 'items-up-to', most: MOST.cells }) }),
        z.minLength(1, { error: named('chapters') }),
        z.describe('the chapters in order: files of lessons, or `lesson`, `title` and `sections`'),
      ),
    paper: z
      .optional(oneOf(PAPERS))
      .check(z.describe('size of the paper; that of the first lesson when left out')),
    twoSided: z
      .optional(yesNo())
      .check(
        z.describe('whether chapters begin on right-hand pages, blank ones before them; true when left out'),
      ),
    contents: z.optional(yesNo()).check(z.describe('a table of contents; true when left out')),
    key: z.optional(yesNo()).check(z.describe('a key to the notation; true when left out')),
    index: z.optional(yesNo()).check(z.describe('an index by voice and rhythm; true when left out')),
  },
  { error: map('a-book') },
);

/** A lesson of a book, or some sections of it. */
export interface Chapter {
  /** Its file, by a path from that of the book. */
  readonly path: string;
  /** Null for the title of the lesson. */
  readonly title: string | null;
  /** Numbers and headings of its sections; null for all. */
  readonly sections: readonly (string | number)[] | null;
}

/** A book. */
export interface Book {
  readonly title: string;
  readonly by: string | null;
  readonly text: string | null;
  readonly chapters: readonly Chapter[];
  /** Null for the paper of the first lesson. */
  readonly paper: Paper | null;
  readonly twoSided: boolean;
  readonly contents: boolean;
  readonly key: boolean;
  readonly index: boolean;
}

/** What came of reading a book. */
export interface BookReading {
  /** Null when there is an error. */
  readonly book: Book | null;
  readonly problems: readonly LessonProblem[];
}

type RawBook = z.output<typeof bookSchema>;

function chapterOf(raw: NonNullable<RawBook['lessons'][number]>): Chapter {
  if (typeof raw === 'string') return { path: raw, title: null, sections: null };
  const { lesson: path, title = null, sections = null } = raw;
  return { path, title, sections };
}

/** Reports sections that a lesson has not. */
function checkSections(book: Book, lessons: ReadonlyMap<string, Lesson>, report: Report): void {
  book.chapters.forEach(({ path, sections }, index) => {
    const lesson = lessons.get(path);
    if (!lesson) return;
    sections?.forEach((name, place) => {
      if (sectionNamed(lesson.sections, name)) return;
      const words = sectionsOf(lesson).flatMap(({ heading }) => heading ?? []);
      report({
        code: 'unknown-section',
        path: ['lessons', index, 'sections', place],
        found: quoted(String(name)),
        expected: words.length === 0 ? { fact: 'lesson-without-sections' } : { fact: 'one-of', words },
        repair: didYouMean(nearest(String(name), words)),
      });
    });
  });
}

function resolveBook(raw: RawBook): Book {
  return {
    title: raw.title,
    by: raw.by ?? null,
    text: raw.text ?? null,
    chapters: raw.lessons.flatMap((each) => (each === undefined ? [] : [chapterOf(each)])),
    paper: raw.paper ?? null,
    twoSided: raw.twoSided ?? true,
    contents: raw.contents ?? true,
    key: raw.key ?? true,
    index: raw.index ?? true,
  };
}

/**
 * Reads a book.
 * @param file name for messages
 * @param lessons those that could be read, by the paths that the book has; its sections are looked for in them
 */
export function parseBook(
  written: string,
  file: string,
  lessons: ReadonlyMap<string, Lesson> = new Map(),
): BookReading {
  const length = lengthProblems(written, file);
  if (length.length > 0) return { book: null, problems: length };
  const lines = new LineCounter();
  const document = parseDocument(written, { lineCounter: lines, prettyErrors: true, uniqueKeys: false });
  const broken = yamlProblems(document, lines, file);
  if (broken.length > 0) return { book: null, problems: broken };
  const plain: unknown = document.toJS();
  const values = valueProblems(plain, file);
  if (values.length > 0) return { book: null, problems: values };
  const locator = createLocator(document, written, lines);
  const problems: LessonProblem[] = [];
  const report: Report = (fault) => {
    if (problems.length < MOST_PROBLEMS) problems.push(locate(fault, locator, file));
  };
  const { faults, data } = shape(bookSchema, plain, { title: 'untitled', lessons: ['untitled'] });
  for (const fault of faults) report(fault);
  const book = resolveBook(data);
  if (faults.length === 0) checkSections(book, lessons, report);
  problems.sort((a, b) => a.line - b.line || a.column - b.column);
  return { book: problems.length > 0 ? null : book, problems };
}

/** A lesson as a chapter has it: under its title there, and with those sections only. */
export function chapterLesson(chapter: Chapter, lesson: Lesson): Lesson {
  const titled = { ...lesson, title: chapter.title ?? lesson.title };
  if (!chapter.sections) return titled;
  const sections = chapter.sections.flatMap((name) => sectionNamed(lesson.sections, name) ?? []);
  return { ...titled, sections, exercises: sections.flatMap(({ exercises }) => exercises) };
}

/** Whether a file is a book, by its name. */
export function isBookFile(path: string): boolean {
  return /\.book\.ya?ml$/i.test(path);
}
