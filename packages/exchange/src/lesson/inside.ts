/**
 * The text of a lesson inside a file that was made from it: sections, layers, forms, goals and whatever else notes
 * cannot say, so that a file of ours comes back as what it was.
 *
 * Conventions: in MusicXML a miscellaneous field, in MIDI a text event of the first track that begins with the name of
 * that field. The text holds only as long as the notes are those that it was written with.
 * Source: MusicXML 4.0, element miscellaneous-field; Standard MIDI Files 1.0 (MMA RP-001), meta event 01.
 */
import { type Lesson, parseLesson } from '@shedbook/core';

/** Name of the field. */
export const LESSON_FIELD = 'shedbook-lesson';

/** The lesson of a text, or null where it is none. */
export function lessonInside(text: string): Lesson | null {
  return parseLesson(text, LESSON_FIELD).lesson ?? null;
}

/** A short sum of lines in any order, by which the notes of a file are known again. @source FNV-1a, 32 bits */
export function sumOf(lines: readonly string[]): string {
  let hash = 0x811c9dc5;
  for (const character of lines.toSorted().join('\n')) {
    hash = Math.imul(hash ^ (character.codePointAt(0) as number), 0x01000193);
  }
  return (hash >>> 0).toString(16).padStart(8, '0');
}
