/** The printed sheet with its code to scan: as a PDF file, and its pages as pictures. */
import type { Lesson } from '@shedbook/core';
import { type Fonts, layOutSheet, type Sheet, type SheetOptions, writePdf } from '@shedbook/engrave';
import { codeOption } from './code.ts';
import { fileNumber, type LessonFile, textFile } from './file.ts';

/** Lays out the sheet of a lesson, with the address of its practice page as a code where it has one. */
export function makeSheet(lesson: Lesson, options: SheetOptions): Sheet {
  return layOutSheet(lesson, { ...options, ...codeOption(lesson) });
}

/** The file that is printed. */
export async function printSheet({ pages, title, by }: Sheet, fonts: Fonts): Promise<LessonFile<'sheet'>> {
  const content = await writePdf(pages, fonts, { title, author: by });
  return { path: 'sheet.pdf', kind: 'sheet', exercise: null, content };
}

/** Every page as an SVG file. */
export function drawPages({ pages }: Sheet): readonly LessonFile<'page'>[] {
  return pages.map((page, index) => ({
    ...textFile(`pages/${fileNumber(index + 1, pages.length)}.svg`, page.svg),
    kind: 'page',
    exercise: null,
  }));
}
