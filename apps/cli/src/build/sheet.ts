/** The printed sheet: PDF, and its pages as SVG. */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { Lesson } from '@shedbook/core';
import { layOutSheet, loadEngraver, loadFonts, writePdf } from '@shedbook/engrave';
import type { Terminal } from '../terminal.ts';
import { fileNumber, type Outbox } from './outbox.ts';
import type { BuildRequest } from './request.ts';

/** The code to scan, where the lesson has an address; what draws it is loaded only then. */
async function codeOf(lesson: Lesson): Promise<{ readonly codeSvg?: string }> {
  if (lesson.practicePage === null) return {};
  const { codeOption } = await import('@shedbook/server');
  return codeOption(lesson);
}

/** Writes the sheet; says which characters no font has. */
export async function writeSheet(
  lesson: Lesson,
  request: BuildRequest,
  outbox: Outbox,
  terminal: Terminal,
): Promise<void> {
  const { resolve } = createRequire(import.meta.url);
  const read = (specifier: string) => readFile(resolve(specifier));
  const [engraver, fonts] = await Promise.all([loadEngraver(), loadFonts(read)]);
  const paper = request.paper === null ? {} : { paper: request.paper };
  const sheet = layOutSheet(lesson, {
    engraver,
    fonts,
    outlineText: true,
    ...paper,
    ...(await codeOf(lesson)),
  });
  if (sheet.missingCharacters.length > 0) {
    const characters = sheet.missingCharacters.map((each) => `"${each}"`).join(', ');
    terminal.warn(`warning: the fonts have no ${characters}; it prints as an empty box`);
  }
  const { title, by } = sheet;
  await outbox.put('sheet.pdf', 'sheet', null, await writePdf(sheet.pages, fonts, { title, author: by }));
  for (const [index, page] of sheet.pages.entries()) {
    await outbox.put(`pages/${fileNumber(index + 1, sheet.pages.length)}.svg`, 'page', null, page.svg);
  }
}
