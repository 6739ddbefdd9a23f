/** Files in and out of the desk. */
import { fileNameOf, type StandardFormat } from '@shedbook/core';
import { FILE_FORMATS } from '@shedbook/pack';
import type { StoredLesson } from '@shedbook/routes';
import { createLesson, exportLesson, importLesson } from '../document/api.ts';
import { titleOf } from '../edit/heading.ts';
import { offer } from '../shared/offer.ts';

/** Formats that a lesson can be taken away in. */
export type ExportFormat = 'yaml' | StandardFormat;

/** Hands a lesson out as a file. */
export async function downloadFromServer(stored: StoredLesson, format: ExportFormat): Promise<void> {
  const { ending, type } = FILE_FORMATS.lesson;
  const text = new Blob([stored.text], { type });
  const named = { file: text, name: fileNameOf(titleOf(stored.text), ending) };
  const { file, name } = format === 'yaml' ? named : await exportLesson(stored.id, format);
  offer(file, name);
}

/** Takes a file in as a new lesson. */
export async function importFile(file: File): Promise<StoredLesson> {
  const isText = /\.ya?ml$/i.test(file.name);
  return isText ? createLesson(await file.text()) : importLesson(file);
}
