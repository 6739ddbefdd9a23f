/** Files in and out of the desk. */
import { fileNameOf } from '@shedbook/core';
import type { StoredLesson } from '@shedbook/server';
import { createLesson, exportLesson, importLesson } from '../document/api.ts';
import { titleOf } from '../edit/heading.ts';
import { offer } from '../shared/offer.ts';

/** Formats that a lesson can be taken away in. */
export type ExportFormat = 'yaml' | 'musicxml' | 'midi';

const ENDINGS: Readonly<Record<ExportFormat, string>> = {
  yaml: '.lesson.yaml',
  musicxml: '.musicxml',
  midi: '.mid',
};

/** Hands a lesson out as a file. */
export async function downloadFromServer(stored: StoredLesson, format: ExportFormat): Promise<void> {
  const name = fileNameOf(titleOf(stored.text), ENDINGS[format]);
  if (format === 'yaml') offer(new Blob([stored.text], { type: 'application/yaml' }), name);
  else offer(await exportLesson(stored.id, format), name);
}

/** Takes a file in as a new lesson. @returns its title, or null when it has none. */
export async function importFile(file: File): Promise<string | null> {
  const isText = /\.ya?ml$/i.test(file.name);
  const stored = isText ? await createLesson(await file.text()) : await importLesson(file);
  return titleOf(stored.text);
}
