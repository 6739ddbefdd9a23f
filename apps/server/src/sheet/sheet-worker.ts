/** The engraving thread: it keeps the engraver and the fonts, and the sheet it made last. */
import { parentPort } from 'node:worker_threads';
import { logOfRows } from '@shedbook/coach';
import { type Lesson, parseLesson } from '@shedbook/core';
import { fileIn, loadEngravingTools, readMedia, readPracticePage } from '@shedbook/host';
import {
  makePack,
  makeSheet,
  PACK_FOLDER,
  printedMedia,
  printHandout,
  printSheet,
  type RecordedDemonstration,
  writeStandardSheet,
  zipPack,
} from '@shedbook/pack';
import type { LessonMedia } from '@shedbook/pack/media';
import { progressPage } from '../progress/progress-page.ts';
import type { ProgressOrder, SheetAnswer, SheetOrder } from './sheet-messages.ts';

const tools = loadEngravingTools();

type Sheet = ReturnType<typeof makeSheet>;

let last: (Pick<SheetOrder, 'text' | 'language'> & { readonly sheet: Sheet }) | null = null;

/** The files that a lesson shows. */
async function mediaOf(lesson: Lesson, { dataDir }: SheetOrder): Promise<LessonMedia> {
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

/** What a pack demonstrates; what that is made with is loaded where there is something. */
async function demonstrationsOf(
  lesson: Lesson,
  { demonstrations }: SheetOrder,
): Promise<readonly RecordedDemonstration[]> {
  if (demonstrations.length === 0) return [];
  const { makeDemonstrations } = await import('@shedbook/host/film');
  const recordings = new Map(demonstrations.map(({ recorded, path }) => [recorded, path]));
  const recorded = [...recordings.keys()];
  return makeDemonstrations(lesson, { recorded, recordings }, new AbortController().signal);
}

/** The bytes of the file that is wanted. */
async function fileOf(lesson: Lesson, order: SheetOrder): Promise<Uint8Array> {
  const { want, text, name, language, assignments, level, isPrivate, format } = order;
  if (want === 'standard') return writeStandardSheet(lesson, format).content;
  if (want === 'pdf') {
    const sheet = await sheetOf(lesson, order);
    return (await printSheet(sheet, (await tools).fonts)).content;
  }
  const app = await readPracticePage();
  const what = { id: name, lesson, text, app, language, assignments, isPrivate, audio: !isPrivate };
  const demonstrations = await demonstrationsOf(lesson, order);
  const judged = level === null ? {} : { level };
  const media = await mediaOf(lesson, order);
  return zipPack(
    await makePack({ ...what, ...judged, ...(await tools), demonstrations, media }),
    PACK_FOLDER,
  );
}

async function progressOf({ lessons, rows, ...order }: ProgressOrder): Promise<SheetAnswer> {
  const shelf = lessons.flatMap(({ id, text }) => {
    const { lesson } = parseLesson(text, 'lesson');
    return lesson ? [{ id, lesson }] : [];
  });
  const { name, assignments, now, weeks, language, paper } = order;
  const student = { name, assignments, shelf, log: logOfRows(rows) };
  const page = progressPage({ student, now, weeks, language });
  const { fonts } = await tools;
  return { kind: 'file', title: page.title, bytes: await printHandout(page, { fonts, paper, language }) };
}

async function answer(order: ProgressOrder | SheetOrder): Promise<SheetAnswer> {
  if (order.want === 'progress') return progressOf(order);
  const { lesson } = parseLesson(order.text, 'lesson');
  if (!lesson) return { kind: 'errors' };
  if (order.want === 'pages') {
    return { kind: 'pages', pages: (await sheetOf(lesson, order)).pages.map((page) => page.svg) };
  }
  return { kind: 'file', title: lesson.title, bytes: await fileOf(lesson, order) };
}

parentPort?.on('message', (order: ProgressOrder | SheetOrder) => {
  answer(order).then(
    (reply) => parentPort?.postMessage(reply),
    (error: Error) => {
      const broken: SheetAnswer = { kind: 'broken', message: error.stack ?? error.message };
      parentPort?.postMessage(broken);
    },
  );
});
