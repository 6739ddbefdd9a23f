/**
 * Pictures, sound and video of the teacher's own, beside a lesson, a section or an exercise.
 *
 * Conventions: a file is named by its path from the folder that the lesson lies in, with slashes; what such a file holds
 * is looked at by whoever has it.
 */
import type { Lesson } from './lesson.ts';
import { MEDIUM_TYPES, type Medium, type MediumEnding, type MediumType } from './media.data.ts';
import { readProse } from './prose.ts';

/** What is wrong with the name of a file. */
export type MediumPathFault = 'outside' | 'other-kind';

/** What is wrong with the file that a name stands for. */
export type MediumFault = 'missing' | 'too-large' | 'other-content' | 'scripts';

/** Looks at a file by its path from the folder of the lesson; null where nothing is wrong with it. */
export type LookAtMedium = (path: string) => MediumFault | null;

/** The ending of a file that can be shown; null for any other. */
export function mediumEnding(path: string): MediumEnding | null {
  const [, ending = ''] = /\.([a-z0-9]+)$/i.exec(path) ?? [];
  const small = ending.toLowerCase();
  return Object.hasOwn(MEDIUM_TYPES, small) ? (small as MediumEnding) : null;
}

/** Kind and media type of a file by its name; null where it cannot be shown. */
export function mediumType(path: string): MediumType | null {
  const ending = mediumEnding(path);
  return ending && MEDIUM_TYPES[ending];
}

/** Whether a path begins elsewhere than in a folder: at the root of a disk, or with the scheme of an address. */
function isAbsolute(path: string): boolean {
  return /^(?:[/\\~]|[a-z][a-z0-9+.-]*:)/i.test(path);
}

/** Whether a path leads out of its folder on the way. */
function leaves(path: string): boolean {
  let depth = 0;
  for (const part of path.split('/')) {
    if (part === '..') depth -= 1;
    else if (part !== '.' && part !== '') depth += 1;
    if (depth < 0) return true;
  }
  return false;
}

/** What is wrong with a name, whatever the file is. */
export function mediumPathFault(path: string): MediumPathFault | null {
  if (isAbsolute(path) || path.includes('\\') || leaves(path)) return 'outside';
  return mediumEnding(path) === null ? 'other-kind' : null;
}

type WithMedia = Pick<Lesson, 'text' | 'media' | 'exercises' | 'sections'>;

/** What a text shows. */
function mediaInText(text: string | null): readonly Medium[] {
  return readProse(text ?? '').flatMap((block) => (block.kind === 'medium' ? [block.medium] : []));
}

/** Everything that a lesson shows, once each, in the order in which it is met. */
export function mediaOf(lesson: WithMedia): readonly Medium[] {
  const all = [lesson, ...lesson.sections].flatMap(({ text, media = [], exercises }) => [
    ...mediaInText(text),
    ...media,
    ...exercises.flatMap((each) => each.media ?? []),
  ]);
  return all.filter(({ path }, at) => all.findIndex((medium) => medium.path === path) === at);
}

/** Media as a lesson file has them: one as itself, and by its path alone where nothing is said of it. */
export function mediaToData({ media = [] }: { readonly media?: readonly Medium[] }): {
  readonly media?: unknown;
} {
  const items = media.map(({ path, says }) => (says === null ? path : { file: path, says }));
  if (items.length === 0) return {};
  return { media: items.length === 1 ? items[0] : items };
}
