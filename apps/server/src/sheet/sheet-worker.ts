/** The engraving thread: it keeps the engraver and the fonts, and the sheet it made last. */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { parentPort } from 'node:worker_threads';
import { parseLesson } from '@shedbook/core';
import { layOutSheet, loadEngraver, loadFonts, type Sheet, writePdf } from '@shedbook/engrave';
import { readAppFiles } from '../pack/app-files.ts';
import { makePack } from '../pack/make-pack.ts';
import { zipPack } from '../pack/zip.ts';
import { codeOption } from './code.ts';
import type { SheetAnswer, SheetOrder } from './sheet-messages.ts';

const { resolve } = createRequire(import.meta.url);
const tools = Promise.all([loadEngraver(), loadFonts((specifier) => readFile(resolve(specifier)))]);

/** The folder that a pack is packed in. */
const PACK_FOLDER = 'practice';

let last: { readonly text: string; readonly sheet: Sheet } | null = null;

async function sheetOf(text: string): Promise<Sheet | null> {
  if (last?.text === text) return last.sheet;
  const { lesson } = parseLesson(text, 'lesson');
  if (!lesson) return null;
  const [engraver, fonts] = await tools;
  const sheet = layOutSheet(lesson, { engraver, fonts, ...codeOption(lesson) });
  last = { text, sheet };
  return sheet;
}

/** The pack of a lesson as a ZIP file; null where the text is no lesson. */
async function packOf({ text, name }: SheetOrder): Promise<Uint8Array | null> {
  const { lesson } = parseLesson(text, 'lesson');
  if (!lesson) return null;
  const [engraver, fonts] = await tools;
  const app = await readAppFiles();
  return zipPack(await makePack({ id: name, lesson, text, app, engraver, fonts }), PACK_FOLDER);
}

async function answer(order: SheetOrder): Promise<SheetAnswer> {
  const { id, text, want } = order;
  if (want === 'pack') {
    const bytes = await packOf(order);
    return bytes ? { id, kind: 'pack', bytes } : { id, kind: 'errors' };
  }
  const sheet = await sheetOf(text);
  if (!sheet) return { id, kind: 'errors' };
  if (want === 'pages') return { id, kind: 'pages', pages: sheet.pages.map((page) => page.svg) };
  const [, fonts] = await tools;
  const { title, by } = sheet;
  return { id, kind: 'pdf', bytes: await writePdf(sheet.pages, fonts, { title, author: by }) };
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
