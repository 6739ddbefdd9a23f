/** The engraving thread: it keeps the engraver and the fonts, and the sheet it made last. */
import { readFile } from 'node:fs/promises';
import { extname } from 'node:path';
import { parentPort } from 'node:worker_threads';
import { logOfRows } from '@shedbook/coach';
import { inSetUp, type Lesson, parseLesson, sectionNamed } from '@shedbook/core';
import { fileIn, loadEngravingTools, readMedia, readPracticePage } from '@shedbook/host';
import {
  type ExerciseFilm,
  makeBookPack,
  makePack,
  makeSheet,
  PACK_FOLDER,
  printBook,
  printedMedia,
  printHandout,
  printSheet,
  type RecordedDemonstration,
  writeStandardSheet,
  zipPack,
} from '@shedbook/pack';
import type { LessonMedia } from '@shedbook/pack/media';
import { progressPage } from '../progress/progress-page.ts';
import { playedIn, shownOf } from './kept-demonstrations.ts';
import type {
  BookOrder,
  DemonstrationOrder,
  HeardPlaying,
  Order,
  ProgressOrder,
  SheetAnswer,
  SheetOrder,
} from './sheet-messages.ts';

const tools = loadEngravingTools();

type Sheet = ReturnType<typeof makeSheet>;

let last: (Pick<SheetOrder, 'text' | 'language'> & { readonly sheet: Sheet }) | null = null;

/** The files that a lesson shows. */
async function mediaOf(lesson: Lesson, { dataDir }: Pick<SheetOrder, 'dataDir'>): Promise<LessonMedia> {
  return dataDir === null ? new Map() : readMedia(lesson, fileIn(dataDir));
}

async function sheetOf(lesson: Lesson, order: SheetOrder): Promise<Sheet> {
  const { text, language } = order;
  if (last?.text === text && last.language === language) return last.sheet;
  const media = printedMedia(lesson, await mediaOf(lesson, order));
  const sheet = makeSheet(lesson, { ...(await tools), language, media });
  last = { text, language, sheet };
  return sheet;
}

/** Performances as demonstrations; what they are made with is loaded where there is something. */
async function demonstrationsOf(
  lesson: Lesson,
  heard: readonly HeardPlaying[],
): Promise<readonly RecordedDemonstration[]> {
  if (heard.length === 0) return [];
  const { makeDemonstrations } = await import('@shedbook/host/film');
  const recordings = new Map(heard.map(({ recorded, path }) => [recorded, path]));
  const recorded = [...recordings.keys()];
  return makeDemonstrations(lesson, { recorded, recordings }, new AbortController().signal);
}

/** What a pack demonstrates: what was sent for it, and of the other exercises what is kept with the lesson. */
async function shownIn(lesson: Lesson, { demonstrations, kept }: SheetOrder) {
  const sent = await demonstrationsOf(lesson, demonstrations);
  const others = shownOf(lesson, kept).filter(
    (each) => !sent.some(({ exercise }) => exercise === each.exercise),
  );
  return [...sent, ...others].toSorted((a, b) => a.exercise - b.exercise);
}

/** A performance as a demonstration that can be kept. */
async function toKeep(lesson: Lesson, { heard }: DemonstrationOrder): Promise<SheetAnswer> {
  const played = playedIn(lesson, heard.recorded.exercise);
  if (!played) return { kind: 'errors' };
  const [made] = await demonstrationsOf(lesson, [heard]);
  if (!made) return { kind: 'errors' };
  const { flac, ...told } = made;
  return { kind: 'demonstration', made: { ...played, facts: JSON.stringify(told), flac } };
}

/** The films that a pack carries. */
function filmsOf({ films }: SheetOrder): Promise<readonly ExerciseFilm[]> {
  const read = films.map(async ({ exercise, path }) => {
    return { exercise, ending: extname(path), content: await readFile(path) };
  });
  return Promise.all(read);
}

/** The bytes of the file that is wanted. */
async function fileOf(lesson: Lesson, order: SheetOrder): Promise<Uint8Array> {
  const { want, text, name, language, assignments, level, setUp, isPrivate, format } = order;
  if (want === 'standard') return writeStandardSheet(lesson, format).content;
  if (want === 'pdf') {
    const sheet = await sheetOf(lesson, order);
    return (await printSheet(sheet, (await tools).fonts)).content;
  }
  const app = await readPracticePage();
  const what = { id: name, lesson, text, app, language, assignments, isPrivate, audio: !isPrivate };
  const demonstrations = await shownIn(lesson, order);
  const own = { ...(level === null ? {} : { level }), ...(setUp === null ? {} : { setUp }) };
  const media = await mediaOf(lesson, order);
  const films = await filmsOf(order);
  return zipPack(
    await makePack({ ...what, ...own, ...(await tools), demonstrations, media, films }),
    PACK_FOLDER,
  );
}

async function progressOf({ lessons, rows, ...order }: ProgressOrder): Promise<SheetAnswer> {
  const shelf = lessons.flatMap(({ id, text }) => {
    const { lesson } = parseLesson(text, 'lesson');
    return lesson ? [{ id, lesson: inSetUp(lesson, order.setUp) }] : [];
  });
  const { name, assignments, now, weeks, language, paper } = order;
  const student = { name, assignments, shelf, log: logOfRows(rows) };
  const page = progressPage({ student, now, weeks, language });
  const { fonts } = await tools;
  return { kind: 'file', title: page.title, bytes: await printHandout(page, { fonts, paper, language }) };
}

async function bookOf(order: BookOrder): Promise<SheetAnswer> {
  const { book, want, language } = order;
  const read = order.lessons.map(({ id, text }) => ({ id, text, lesson: parseLesson(text, id).lesson }));
  const isWhole = ({ id, lesson }: (typeof read)[number]) =>
    lesson !== null &&
    book.chapters.every(({ path, sections }) =>
      path === id ? (sections ?? []).every((name) => sectionNamed(lesson.sections, name)) : true,
    );
  const faulty = read.filter((each) => !isWhole(each)).map(({ id }) => id);
  if (faulty.length > 0) return { kind: 'unfinished', lessons: faulty };
  const lessons = new Map(
    read.flatMap(({ id, text, lesson }) => (lesson ? [[id, { id, text, lesson }] as const] : [])),
  );
  const media = new Map<string, LessonMedia>();
  for (const [id, { lesson }] of lessons) media.set(id, await mediaOf(lesson, order));
  const made = { ...(await tools), language, media };
  if (want === 'book') {
    const parsed = new Map([...lessons].map(([id, { lesson }]) => [id, lesson]));
    return { kind: 'file', title: book.title, bytes: (await printBook(book, parsed, made)).content };
  }
  const app = await readPracticePage();
  const demonstrations = new Map(
    order.lessons.map(({ id, kept }) => {
      const lesson = lessons.get(id)?.lesson;
      return [id, lesson ? shownOf(lesson, kept) : []] as const;
    }),
  );
  const files = await makeBookPack(book, lessons, { ...made, app, demonstrations });
  return { kind: 'file', title: book.title, bytes: zipPack(files, PACK_FOLDER) };
}

async function answer(order: Order): Promise<SheetAnswer> {
  if ('book' in order) return bookOf(order);
  if (order.want === 'progress') return progressOf(order);
  const { lesson } = parseLesson(order.text, 'lesson');
  if (!lesson) return { kind: 'errors' };
  if (order.want === 'demonstration') return toKeep(lesson, order);
  if (order.want === 'pages') {
    return { kind: 'pages', pages: (await sheetOf(lesson, order)).pages.map((page) => page.svg) };
  }
  return { kind: 'file', title: lesson.title, bytes: await fileOf(lesson, order) };
}

parentPort?.on('message', (order: Order) => {
  answer(order).then(
    (reply) => parentPort?.postMessage(reply),
    (error: Error) => {
      const broken: SheetAnswer = { kind: 'broken', message: error.stack ?? error.message };
      parentPort?.postMessage(broken);
    },
  );
});
