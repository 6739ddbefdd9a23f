/** Files: sheets as pictures and as PDF, packs, standard files out and in. */
import { fileNameOf, type Lesson, parseLesson } from '@shedbook/core';
import { FILE_FORMATS, type FileFormat, writeStandardSheet } from '@shedbook/pack';
import type { SentFile, StoredLesson } from '@shedbook/routes';
import { importLesson } from '../files/import-lesson.ts';
import type { SheetMaker } from '../sheet/sheet-maker.ts';
import type { LessonStore } from '../store/lessons.ts';
import { noteGivenOut } from '../store/names-in-use.ts';
import type { StudentStore } from '../store/students.ts';
import { answer, type Handlers, refuse } from './handlers.ts';

/** What files are made with. */
export interface FileParts {
  readonly store: LessonStore;
  readonly students: StudentStore;
  readonly sheets: SheetMaker;
  /** Makes packs, which takes long, in a thread of its own. */
  readonly packs: SheetMaker;
}

function sentFile({ text }: StoredLesson, format: FileFormat, content: Uint8Array): SentFile {
  const { ending, type } = FILE_FORMATS[format];
  const title = parseLesson(text, 'lesson').lesson?.title ?? null;
  return { name: fileNameOf(title, ending), type, content };
}

/** Answers the routes of files. */
export function fileHandlers({ store, students, sheets, packs }: FileParts) {
  /** What a student has to do of a lesson; nothing where there is no such student. */
  const setFor = async (student: string, lesson: string) => {
    const found = (await students.list()).find((each) => each.id === student);
    const all = found?.assignments.filter((each) => each.lesson === lesson) ?? [];
    return all.map(({ exercise, pinned, note }) => ({ exercise, pinned, note }));
  };
  /** What is made of a lesson, or why it is not. */
  async function made<Made>(id: string, make: (stored: StoredLesson) => Promise<Made | null>) {
    const stored = await store.read(id);
    if (!stored) return refuse('no-such-lesson', {});
    const value = await make(stored);
    return value === null ? refuse('lesson-has-errors', {}) : answer(value);
  }
  const madeFile = (
    id: string,
    format: FileFormat,
    make: (stored: StoredLesson) => Promise<Uint8Array | null>,
  ) =>
    made(id, async (stored) => {
      const content = await make(stored);
      return content && sentFile(stored, format, content);
    });
  const written = async (
    stored: StoredLesson,
    write: (lesson: Lesson) => { readonly content: Uint8Array },
  ) => {
    const { lesson } = parseLesson(stored.text, 'lesson');
    return lesson && write(lesson).content;
  };
  return {
    readPages: ({ params, query }) =>
      made(params.id, async ({ text, revision }) => {
        const pages = await sheets.pages(text, query.language);
        return pages && { revision, pages };
      }),
    printSheet: ({ params, query }) =>
      madeFile(params.id, 'sheet', ({ text }) => sheets.pdf(text, query.language)),
    packLesson: ({ params, query }) =>
      madeFile(params.id, 'pack', async (stored) => {
        const { text, id } = stored;
        const assignments = query.student === undefined ? [] : await setFor(query.student, id);
        const pack = await packs.pack({ text, name: id, language: query.language, assignments });
        if (pack) await noteGivenOut(store, stored);
        return pack;
      }),
    exportLesson: ({ params: { id, format } }) =>
      madeFile(id, format, (stored) => written(stored, (lesson) => writeStandardSheet(lesson, format))),
    importLesson: async ({ query, body }) => {
      const outcome = importLesson(body, query.name);
      if (outcome.kind === 'refused') return refuse('unreadable-file', { why: { ...outcome.why } });
      return answer(await store.create(outcome.text));
    },
  } satisfies Partial<Handlers>;
}
