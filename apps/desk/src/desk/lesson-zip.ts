/**
 * A lesson with the files that it shows, as one ZIP file, and such a file taken in again.
 *
 * Conventions: the lesson file stands at the top, the others under the paths that it names, so that an unpacked folder is
 * one that every program of ours reads.
 */
import { LONGEST_LESSON, MEDIUM_BYTES, type Medium, mediaOf, mediumType, parseLesson } from '@shedbook/core';
import type { PackFile } from '@shedbook/pack';
import { strFromU8, unzipSync } from 'fflate';
import { keepMedium } from '../document/keep-medium.ts';
import { findMedium } from '../shared/find-medium.ts';

/** The largest file that is taken out of one, in bytes. */
const MOST_BYTES = Math.max(...Object.values(MEDIUM_BYTES), 4 * LONGEST_LESSON);

/** The media of a lesson that the server keeps. */
export async function keptMedia(text: string): Promise<readonly PackFile[]> {
  const { lesson } = parseLesson(text, 'lesson');
  const read = async ({ path }: Medium): Promise<readonly PackFile[]> => {
    const found = findMedium(path);
    const answer = found ? await fetch(found.href) : null;
    return answer?.ok ? [{ path, content: new Uint8Array(await answer.arrayBuffer()) }] : [];
  };
  return (await Promise.all((lesson ? mediaOf(lesson) : []).map(read))).flat();
}

/** A path where it stands alone, and not as a part of a longer one. */
function alone(path: string): RegExp {
  const escaped = path.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&');
  return new RegExp(`(?<![\\w./-])${escaped}(?![\\w/-])`, 'g');
}

/** What a ZIP file holds of lessons and media; nothing where it is damaged. */
function entriesOf(bytes: Uint8Array): Readonly<Record<string, Uint8Array>> {
  try {
    return unzipSync(bytes, {
      filter: ({ name, originalSize }) =>
        originalSize <= MOST_BYTES && (/\.ya?ml$/i.test(name) || mediumType(name) !== null),
    });
  } catch {
    return {};
  }
}

/**
 * The text of the lesson in a ZIP file, once the server keeps what it shows.
 * @returns null where there is no lesson in it
 * @throws RefusedError where a file cannot be shown
 */
export async function takeApart(file: File): Promise<string | null> {
  const entries = entriesOf(new Uint8Array(await file.arrayBuffer()));
  const found = Object.keys(entries).find((name) => /\.ya?ml$/i.test(name));
  if (found === undefined) return null;
  let text = strFromU8(entries[found] as Uint8Array);
  const { lesson } = parseLesson(text, found);
  const folder = found.slice(0, found.lastIndexOf('/') + 1);
  for (const { path } of lesson ? mediaOf(lesson) : []) {
    const content = entries[`${folder}${path}`];
    if (!content) continue;
    const kept = await keepMedium(new File([content as Uint8Array<ArrayBuffer>], path));
    if (kept.path !== path) text = text.replaceAll(alone(path), kept.path);
  }
  return text;
}
