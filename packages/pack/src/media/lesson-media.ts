/** The files of a lesson, and where a pack has them. */
import type { MediumFile } from './medium-file.ts';

/** A file, and the PNG that is printed of a picture that a printer does not know; null where it is printed as it is. */
export interface LessonMedium extends MediumFile {
  readonly png: Uint8Array | null;
}

/** Files by their paths in the lesson. */
export type LessonMedia = ReadonlyMap<string, LessonMedium>;

/** The folder of a pack that they lie in. */
const FOLDER = 'media';

/** Where a file lies in a pack. */
export function pathInPack({ name }: MediumFile): string {
  return `${FOLDER}/${name}`;
}
