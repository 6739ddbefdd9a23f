/** The engraving thread: it keeps the engraver and the fonts, and the sheet it made last. */
import { parentPort } from 'node:worker_threads';
import { parseLesson } from '@shedbook/core';
import { loadEngravingTools, readPracticePage } from '@shedbook/host';
import { makePack, makeSheet, PACK_FOLDER, printSheet, zipPack } from '@shedbook/pack';
import type { SheetAnswer, SheetOrder } from './sheet-messages.ts';

const tools = loadEngravingTools();

type Sheet = ReturnType<typeof makeSheet>;

let last: (Pick<SheetOrder, 'text' | 'language'> & { readonly sheet: Sheet }) | null = null;

async function sheetOf({ text, language }: SheetOrder): Promise<Sheet | null> {
  if (last?.text === text && last.language === language) return last.sheet;
  const { lesson } = parseLesson(text, 'lesson');
  if (!lesson) return null;
  const sheet = makeSheet(lesson, { ...(await tools), language });
  last = { text, language, sheet };
  return sheet;
}

/** The pack of a lesson as a ZIP file; null where the text is no lesson. */
async function packOf({ text, name, language, assignments }: SheetOrder): Promise<Uint8Array | null> {
  const { lesson } = parseLesson(text, 'lesson');
  if (!lesson) return null;
  const app = await readPracticePage();
  const made = { id: name, lesson, text, app, language, assignments, ...(await tools) };
  return zipPack(await makePack(made), PACK_FOLDER);
}

async function answer(order: SheetOrder): Promise<SheetAnswer> {
  const { id, want } = order;
  if (want === 'pack') {
    const bytes = await packOf(order);
    return bytes ? { id, kind: 'pack', bytes } : { id, kind: 'errors' };
  }
  const sheet = await sheetOf(order);
  if (!sheet) return { id, kind: 'errors' };
  if (want === 'pages') return { id, kind: 'pages', pages: sheet.pages.map((page) => page.svg) };
  const { fonts } = await tools;
  return { id, kind: 'pdf', bytes: (await printSheet(sheet, fonts)).content };
}

parentPort?.on('message', (order: SheetOrder) => {
  answer(order).then(
    (reply) => parentPort?.postMessage(reply),
    (error: Error) => {
      const broken: SheetAnswer = { id: order.id, kind: 'broken', message: error.stack ?? error.message };
      parentPort?.postMessage(broken);
    },
  );
});
