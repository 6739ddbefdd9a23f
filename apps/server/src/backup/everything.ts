/**
 * Lessons, books, students, their practice and their takes without the sound as one JSON document, for another program.
 *
 * Conventions: it comes bit by bit, so that a school's years fit into little memory; no secret of a link is in it, since
 * none is kept.
 */
import { jsonIn } from '@shedbook/core';
import type { LogPage } from '@shedbook/routes';
import type { BookStore } from '../store/books.ts';
import type { DemonstrationStore } from '../store/demonstrations.ts';
import type { HourStore } from '../store/hours.ts';
import type { LessonStore } from '../store/lessons.ts';
import type { LinkStore } from '../store/links.ts';
import { MEDIA_FOLDER, namesInText } from '../store/media-files.ts';
import type { StudentStore } from '../store/students.ts';
import type { TakeStore } from '../store/takes.ts';

/** Version of the document. */
const VERSION = 1;

/** What it is made of. */
export interface EverythingParts {
  readonly store: LessonStore;
  readonly students: StudentStore;
  readonly takes: TakeStore;
  readonly links: LinkStore;
  readonly hours: HourStore;
  readonly demonstrations: DemonstrationStore;
  readonly books: BookStore;
}

/** A row of practice: its entry, or its text where that is none. */
function rowOf({ version, text, takenAt, isSound }: LogPage['rows'][number]): unknown {
  const entry = isSound ? jsonIn(text) : null;
  return { version, takenAt, ...(entry === null ? { text } : { entry }) };
}

/** Values as the elements of a JSON array. */
async function* elements(values: AsyncIterable<unknown> | Iterable<unknown>): AsyncGenerator<string> {
  let isFirst = true;
  for await (const value of values) {
    yield `${isFirst ? '\n' : ',\n'}${JSON.stringify(value)}`;
    isFirst = false;
  }
}

async function* practiceOf(students: StudentStore, id: string): AsyncGenerator<unknown> {
  for (let after: number | null = 0; after !== null; ) {
    const page: LogPage | null = await students.readLog(id, after);
    for (const row of page?.rows ?? []) yield rowOf(row);
    after = page?.next ?? null;
  }
}

/** Lessons with the files that they show, by their paths in a backup, and what of them the teacher plays. */
async function* lessonsOf({ store, demonstrations }: EverythingParts): AsyncGenerator<unknown> {
  const filed = new Map((await store.shelf()).map(({ summary }) => [summary.id, summary]));
  for (const { id, text, createdAt, updatedAt } of await store.list()) {
    const { level = null, shelves = [], isArchived = false } = filed.get(id) ?? {};
    const media = [...new Set(namesInText(text))].map((name) => `${MEDIA_FOLDER}/${name}`);
    const played = (await demonstrations.of(id)).map(({ exercise, facts, keptAt }) => {
      return { ...(jsonIn(facts) as object | null), exercise, keptAt };
    });
    yield { id, text, media, demonstrations: played, level, shelves, isArchived, createdAt, updatedAt };
  }
}

async function* studentParts(parts: EverythingParts, teacher: string): AsyncGenerator<string> {
  const { students, takes, links, hours } = parts;
  let isFirst = true;
  let after: string | undefined;
  do {
    const page = await students.page({ find: '', after }, teacher);
    for (const { rows: _, lastRow: __, ...student } of page.students) {
      const own = {
        ...{ ...student, takes: await takes.of(student.id), links: await links.list(student.id) },
        hours: (await hours.of(student.id))?.hours ?? [],
      };
      yield `${isFirst ? '\n' : ',\n'}${JSON.stringify(own).slice(0, -1)},"practice":[`;
      yield* elements(practiceOf(students, student.id));
      yield ']}';
      isFirst = false;
    }
    after = page.next ?? undefined;
  } while (after !== undefined);
}

/**
 * The bytes of the document.
 * @param madeAt ISO 8601, in UTC
 * @param teacher whose students; the lessons are everybody's
 */
export async function* everything(
  parts: EverythingParts,
  madeAt: string,
  teacher: string,
): AsyncGenerator<Uint8Array> {
  const pieces = async function* (): AsyncGenerator<string> {
    yield `{"version":${VERSION},"madeAt":${JSON.stringify(madeAt)},"lessons":[`;
    yield* elements(lessonsOf(parts));
    yield '],"books":[';
    yield* elements(await parts.books.list());
    yield '],"students":[';
    yield* studentParts(parts, teacher);
    yield ']}\n';
  };
  for await (const piece of pieces()) yield Buffer.from(piece);
}
