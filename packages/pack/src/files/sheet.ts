/** The printed sheet with its code to scan: as a PDF file, and its pages as pictures. */
import type { Lesson } from '@shedbook/core';
import { type Fonts, layOutSheet, type Sheet, type SheetOptions, writePdf } from '@shedbook/engrave';
import { type LanguageTag, SHEET_WORDS } from '@shedbook/words';
import { codeOption } from './code.ts';
import { fileNumber, type LessonFile, textFile } from './file.ts';

/** What a sheet is made with. */
export interface SheetRequest extends Omit<SheetOptions, 'words' | 'codeSvg'> {
  /** The language that it prints. */
  readonly language: LanguageTag;
}

/** Lays out the sheet of a lesson, with the address of its practice page as a code where it has one. */
export function makeSheet(lesson: Lesson, { language, ...options }: SheetRequest): Sheet {
  return layOutSheet(lesson, { ...options, words: SHEET_WORDS[language], ...codeOption(lesson) });
}

/** The file that is printed. */
export async function printSheet(
  { pages, title, by, language }: Sheet,
  fonts: Fonts,
): Promise<LessonFile<'sheet'>> {
  const content = await writePdf(pages, fonts, { title, author: by, language });
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
