/** Files in and out of the desk. */
import { fileNameOf, type StandardFormat } from '@shedbook/core';
import { FILE_FORMATS, textFile, zipFiles } from '@shedbook/pack';
import type { StoredLesson } from '@shedbook/routes';
import { createLesson, exportLesson, importLesson } from '../document/api.ts';
import { titleOf } from '../edit/heading.ts';
import { offer } from '../shared/offer.ts';
import { keptMedia, takeApart } from './lesson-zip.ts';

/** Formats that a lesson can be taken away in. */
export type ExportFormat = 'yaml' | StandardFormat;

/** A lesson as a file, together with what it shows where it shows anything. */
async function lessonFile({ text }: StoredLesson): Promise<{ readonly file: Blob; readonly name: string }> {
  const { ending, type } = FILE_FORMATS.lesson;
  const name = fileNameOf(titleOf(text), ending);
  const media = await keptMedia(text);
  if (media.length === 0) return { file: new Blob([text], { type }), name };
  const zip = zipFiles([textFile(name, text), ...media]);
  const packed = new Blob([zip as Uint8Array<ArrayBuffer>], { type: FILE_FORMATS.pack.type });
  return { file: packed, name: fileNameOf(titleOf(text), FILE_FORMATS.pack.ending) };
}

/** Hands a lesson out as a file. */
export async function downloadFromServer(stored: StoredLesson, format: ExportFormat): Promise<void> {
  const made = format === 'yaml' ? await lessonFile(stored) : await exportLesson(stored.id, format);
  offer(made.file, made.name);
}

/** Takes a file in as a new lesson. */
export async function importFile(file: File): Promise<StoredLesson> {
  if (/\.ya?ml$/i.test(file.name)) return createLesson(await file.text());
  const text = /\.zip$/i.test(file.name) ? await takeApart(file) : null;
  return text === null ? importLesson(file) : createLesson(text);
}
