/** The files of a lesson as they are printed. */
import type { Lesson } from '@shedbook/core';
import type { PrintedCode, PrintedMedia, PrintedPicture } from '@shedbook/engrave';
import { type LessonMedia, type LessonMedium, pathInPack } from '../media/lesson-media.ts';
import { dataUri } from '../media/medium-file.ts';
import { drawCode } from './code.ts';

/** The address of a file of a practice page. */
function addressIn(practicePage: string, path: string): string {
  const [start = ''] = practicePage.split(/[?#]/);
  const isFile = /\/[^/]+\.[a-z0-9]+$/i.test(start.replace(/^https?:\/\/[^/]+/, ''));
  const folder = isFile ? start.slice(0, start.lastIndexOf('/')) : start.replace(/\/$/, '');
  return `${folder}/${path}`;
}

function pictureOf({ type, content, png, size }: LessonMedium): PrintedPicture | null {
  if (!size) return null;
  return { kind: 'picture', ...size, dataUri: png ? dataUri('image/png', png) : dataUri(type, content) };
}

/** What is printed of a lesson's files: pictures, and codes to scan where the address of the practice page is known. */
export function printedMedia(
  { practicePage }: Pick<Lesson, 'practicePage'>,
  media: LessonMedia,
): PrintedMedia {
  const printed = new Map<string, PrintedPicture | PrintedCode>();
  for (const [path, medium] of media) {
    const picture = pictureOf(medium);
    if (picture) printed.set(path, picture);
    else if (practicePage !== null)
      printed.set(path, { kind: 'code', svg: drawCode(addressIn(practicePage, pathInPack(medium))) });
  }
  return printed;
}
