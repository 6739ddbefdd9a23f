/** The engraving thread: it keeps the engraver and the fonts, and the sheet it made last. */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { parentPort } from 'node:worker_threads';
import { parseLesson } from '@shedbook/core';
import { layOutSheet, loadEngraver, loadFonts, type Sheet, writePdf } from '@shedbook/engrave';
import { codeOption } from './code.ts';
import type { SheetAnswer, SheetOrder } from './sheet-messages.ts';

const { resolve } = createRequire(import.meta.url);
const tools = Promise.all([loadEngraver(), loadFonts((specifier) => readFile(resolve(specifier)))]);
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

async function answer({ id, text, want }: SheetOrder): Promise<SheetAnswer> {
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
