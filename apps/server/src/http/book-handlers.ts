/** Books: list, make, keep, put away, bring back, erase, print and pack. */
import { fileNameOf } from '@shedbook/core';
import { FILE_FORMATS, type FileFormat } from '@shedbook/pack/serving';
import type { StoredBook } from '@shedbook/routes';
import type { BookText, MadeBook, SheetMaker, WhoWaits } from '../sheet/sheet-maker.ts';
import type { BookStore } from '../store/books.ts';
import type { DemonstrationStore } from '../store/demonstrations.ts';
import type { LessonStore } from '../store/lessons.ts';
import { noteGivenOut } from '../store/names-in-use.ts';
import { answer, type Handlers, refuse, teacherOf } from './handlers.ts';

/** What the answers are made with. */
export interface BookParts {
  readonly books: BookStore;
  readonly store: LessonStore;
  readonly sheets: SheetMaker;
  /** Makes packs, which takes long, in a thread of its own. */
  readonly packs: SheetMaker;
  /** Folder of the store. */
  readonly dataDir: string;
  /** Demonstrations that are kept with lessons: a pack shows them. */
  readonly demonstrations: DemonstrationStore;
}

/** Answers the routes of books. */
export function bookHandlers({ books, store, sheets, packs, dataDir, demonstrations }: BookParts) {
  /** The lessons of a book, each once; those that are gone by their ids. */
  async function lessonsOf({ chapters }: StoredBook) {
    const ids = [...new Set(chapters.map(({ lesson }) => lesson))];
    const read = await Promise.all(ids.map((id) => store.read(id)));
    const lessons = read.flatMap((stored) => stored ?? []);
    const gone = ids.filter((_, index) => read[index] === null);
    return { lessons, gone };
  }
  /** What is made of a book, or why it is not. */
  async function made(
    id: string,
    format: FileFormat,
    make: (
      book: Omit<BookText, 'language'>,
      lessons: Awaited<ReturnType<typeof lessonsOf>>,
    ) => Promise<MadeBook>,
  ) {
    const book = await books.read(id);
    if (!book) return refuse('no-such-book', {});
    const found = await lessonsOf(book);
    if (found.gone.length > 0 || book.chapters.length === 0)
      return refuse('book-unfinished', { lessons: found.gone });
    const { revision: _, updatedAt: __, id: ___, chapters, ...said } = book;
    const reading = found.lessons.map(async ({ id: lesson, text }) => {
      return { id: lesson, text, kept: format === 'pack' ? await demonstrations.whole(lesson) : [] };
    });
    const lessons = await Promise.all(reading);
    const of = {
      ...said,
      chapters: chapters.map(({ lesson, title, sections = null }) => ({ path: lesson, title, sections })),
    };
    const outcome = await make({ book: of, lessons, dataDir }, found);
    if (outcome.kind === 'unfinished') return refuse('book-unfinished', { lessons: outcome.lessons });
    const { ending, type } = FILE_FORMATS[format];
    return answer({ name: fileNameOf(book.title, ending), type, content: outcome.bytes });
  }
  return {
    listBooks: async () => answer(await books.list()),
    createBook: async ({ body }, _signal, caller) => answer(await books.create(body, teacherOf(caller).id)),
    saveBook: async ({ params, body }) => {
      const outcome = await books.save(params.id, body);
      if (outcome.kind === 'saved') return answer(outcome.book);
      return outcome.kind === 'missing'
        ? refuse('no-such-book', {})
        : refuse('book-changed', { kept: outcome.kept });
    },
    removeBook: async ({ params }) =>
      (await books.remove(params.id)) ? answer(null) : refuse('no-such-book', {}),
    restoreBook: async ({ params }) => {
      const book = await books.restore(params.id);
      return book ? answer(book) : refuse('no-such-book', {});
    },
    eraseBook: async ({ params }) =>
      (await books.erase(params.id)) ? answer(null) : refuse('no-such-book', {}),
    printBook: ({ params: { id }, query: { language } }, signal) => {
      const who: WhoWaits = { of: id, signal };
      return made(id, 'sheet', (book) => sheets.book({ ...book, language, want: 'book' }, who));
    },
    packBook: ({ params: { id }, query: { language } }, signal) => {
      const who: WhoWaits = { of: id, signal };
      return made(id, 'pack', async (book, { lessons }) => {
        const pack = await packs.book({ ...book, language, want: 'book-pack' }, who);
        if (pack.kind === 'made') for (const lesson of lessons) await noteGivenOut(store, lesson);
        return pack;
      });
    },
  } satisfies Partial<Handlers>;
}
