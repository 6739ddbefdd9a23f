/** Changing what a lesson, or one of its sections, says of how and what is played. */
import { editLesson, type FieldPath, sectionPath } from '@shedbook/core';

/** Where a lesson or a section of it is written; the section is its number among all, null is the lesson. */
export function partPath(text: string, section: number | null): FieldPath {
  return section === null ? [] : sectionPath(text, section);
}

/** The text with a key of a lesson or a section; `undefined` takes it out, so that a section takes the lesson's. */
export function setPlayed(text: string, section: number | null, key: string, value: unknown): string {
  return editLesson(text, [...partPath(text, section), key], value);
}
