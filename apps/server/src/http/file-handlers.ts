/** Files: sheets as pictures and as PDF, packs, standard files out and in. */
import { fileNameOf } from '@shedbook/core';
import { FILE_FORMATS, type FileFormat } from '@shedbook/pack/serving';
import type { SentFile, StoredLesson } from '@shedbook/routes';
import type { ImportMaker } from '../files/import-maker.ts';
import type { FilmMaker } from '../films/film-maker.ts';
import type { MadeFile, SheetMaker, WhoWaits } from '../sheet/sheet-maker.ts';
import type { DemonstrationStore } from '../store/demonstrations.ts';
import type { LessonStore } from '../store/lessons.ts';
import { noteGivenOut } from '../store/names-in-use.ts';
import type { StudentStore } from '../store/students.ts';
import { answer, type Handlers, refuse, teacherOf } from './handlers.ts';

/** What files are made with. */
export interface FileParts {
  readonly store: LessonStore;
  readonly students: StudentStore;
  readonly sheets: SheetMaker;
  /** Makes packs, which takes long, in a thread of its own. */
  readonly packs: SheetMaker;
  readonly imports: ImportMaker;
  /** Folder of the store. */
  readonly dataDir: string;
  /** Keeps performances that were sent and heard. */
  readonly films: FilmMaker;
  /** Demonstrations that are kept with lessons. */
  readonly demonstrations: DemonstrationStore;
}

function sentFile({ title, bytes }: MadeFile, format: FileFormat): SentFile {
  const { ending, type } = FILE_FORMATS[format];
  return { name: fileNameOf(title, ending), type, content: bytes };
}

/** Answers the routes of files. */
export function fileHandlers(parts: FileParts) {
  const { store, students, sheets, packs, imports, films, dataDir } = parts;
  /** What a student has to do of a lesson, their level and their set-up; nothing where there is no such student. */
  const setFor = async (student: string | undefined, lesson: string) => {
    const found = student === undefined ? null : await students.read(student);
    if (!found) return {};
    const own = found.assignments.filter((each) => each.lesson === lesson);
    const assignments = own.map(({ exercise, pinned, note, toBpm, by }) => {
      return { exercise, pinned, note, toBpm, by };
    });
    return { assignments, level: found.level, setUp: found.setUp };
  };
  /** What is made of a lesson, or why it is not. */
  async function made<Made>(id: string, make: (stored: StoredLesson) => Promise<Made | null>) {
    const stored = await store.read(id);
    if (!stored) return refuse('no-such-lesson', {});
    const value = await make(stored);
    return value === null ? refuse('lesson-has-errors', {}) : answer(value);
  }
  const madeFile = (
    who: WhoWaits,
    format: FileFormat,
    make: (stored: StoredLesson) => Promise<MadeFile | null>,
  ) =>
    made(who.of, async (stored) => {
      const file = await make(stored);
      return file && sentFile(file, format);
    });
  return {
    readPages: ({ params: { id }, query }, signal) =>
      made(id, async ({ text, revision }) => {
        const pages = await sheets.pages({ text, language: query.language, dataDir }, { of: id, signal });
        return pages && { revision, pages };
      }),
    printSheet: ({ params, query }, signal) => {
      const who = { of: params.id, signal };
      return madeFile(who, 'sheet', ({ text }) =>
        sheets.pdf({ text, language: query.language, dataDir }, who),
      );
    },
    packLesson: async ({ params, query }, signal) => {
      const who = { of: params.id, signal };
      const demonstrations = films.heard(query.performances?.split(',') ?? []);
      if (!demonstrations) return refuse('no-such-performance', {});
      const filmed = await films.packed(params.id, query.films?.split(',') ?? []);
      if (!filmed) return refuse('no-such-film', {});
      return madeFile(who, 'pack', async (stored) => {
        const { text, id } = stored;
        const set = await setFor(query.student, id);
        const { language } = query;
        const kept = await parts.demonstrations.whole(id);
        const shown = { demonstrations, kept, films: filmed };
        const pack = await packs.pack({ text, name: id, language, dataDir, ...shown, ...set }, who);
        if (pack) await noteGivenOut(store, stored);
        return pack;
      });
    },
    exportLesson: ({ params: { id, format } }, signal) => {
      const who = { of: id, signal };
      return madeFile(who, format, ({ text }) => sheets.standard(text, format, who));
    },
    importLesson: async ({ query, body }, signal, caller) => {
      const outcome = await imports.read(body, query.name, { of: query.name, signal });
      if (outcome.kind === 'refused') return refuse('unreadable-file', { why: { ...outcome.why } });
      return answer(await store.create(outcome.text, teacherOf(caller).id));
    },
  } satisfies Partial<Handlers>;
}
