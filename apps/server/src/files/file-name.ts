/** File names for what a lesson is taken away as. */
import { parseLesson } from '@shedbook/core';

/** A name of letters, digits and hyphens from a lesson's title, with an ending such as `.pdf`. */
export function fileNameOf(text: string, ending: string): string {
  const title = parseLesson(text, 'lesson').lesson?.title ?? '';
  const plain = title
    .normalize('NFD')
    .replaceAll(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '');
  return `${plain || 'lesson'}${ending}`;
}
