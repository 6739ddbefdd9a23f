/** Files in and out of the desk. */
import { fileNameOf } from '@shedbook/core';
import type { StoredLesson } from '@shedbook/server';
import { createLesson, exportLesson, importLesson } from '../document/api.ts';
import { titleOf } from '../edit/heading.ts';

/** Formats that a lesson can be taken away in. */
export type ExportFormat = 'yaml' | 'musicxml' | 'midi';

const ENDINGS: Readonly<Record<ExportFormat, string>> = {
  yaml: '.lesson.yaml',
  musicxml: '.musicxml',
  midi: '.mid',
};

/** Hands a file to the person at the screen. */
export function offer(file: Blob, name: string): void {
  const url = URL.createObjectURL(file);
  const link = Object.assign(document.createElement('a'), { href: url, download: name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}

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
