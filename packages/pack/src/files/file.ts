/**
 * The files that a lesson becomes: what they are and how they are named.
 *
 * Conventions: paths are relative to the folder that somebody chose, with slashes; text is UTF-8.
 */
import { exerciseLabel, type StandardFormat } from '@shedbook/core';
import { strToU8 } from 'fflate';

/** A file: where it goes, and what is in it. */
export interface PackFile {
  readonly path: string;
  readonly content: Uint8Array;
}

/** What a file of a lesson is. */
export type FileKind = 'sheet' | 'page' | StandardFormat | 'audio' | 'lesson' | 'film';

/** A file that a lesson becomes. */
export interface LessonFile<Kind extends FileKind = FileKind> extends PackFile {
  readonly kind: Kind;
  /** The exercise it is of, from 1, or null for the whole sheet. */
  readonly exercise: number | null;
}

/** A file of text. */
export function textFile(path: string, text: string): PackFile {
  return { path, content: strToU8(text) };
}

/**
 * The number of an exercise as file names have it, so that they sort as they count.
 * @example fileNumber(3, 24) // '03'
 * @example fileNumber(7, 120) // '007'
 * @example fileNumber(20003, 24) // 'B03'
 */
export function fileNumber(number: number, of: number): string {
  const digits = Math.max(2, String(of).length);
  return exerciseLabel(number).replace(/\d+/, (place) => place.padStart(digits, '0'));
}
