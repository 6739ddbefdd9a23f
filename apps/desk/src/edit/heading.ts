/** Changing what stands above the exercises. */
import {
  editLesson,
  handsMirrored,
  isSticked,
  type Lesson,
  lessonKey,
  type SetUp,
  type SheetSettings,
} from '@shedbook/core';
import type { NamesInUse } from '@shedbook/routes';
import { parseDocument } from 'yaml';
import { changeExercises, type InUse } from './exercises.ts';

/** The text with another title. */
export function setTitle(text: string, title: string): string {
  return editLesson(text, ['title'], title);
}

/** The text with another title, under its lasting name where something refers to it. */
export function renamed(text: string, title: string, inUse: Pick<NamesInUse, 'lesson'>): string {
  const after = setTitle(text, title);
  const id = parseDocument(text).get('id');
  const name = lessonKey({ id: typeof id === 'string' ? id : null, title: titleOf(text) ?? '' });
  const isSame = lessonKey({ id: null, title }) === name;
  if (isSame) return editLesson(after, ['id'], undefined);
  return inUse.lesson ? editLesson(after, ['id'], name) : after;
}

/** The text with another name under the title, or none. */
export function setBy(text: string, by: string): string {
  return editLesson(text, ['by'], by === '' ? undefined : by);
}

/**
 * The text for the other set-up: hands that are written for the exercises change sides with the limbs, and exercises keep
 * the names that something refers to.
 */
export function setSetUp(text: string, lesson: Lesson, setUp: SetUp, inUse: InUse): string {
  if (lesson.setUp === setUp) return text;
  const sided = editLesson(text, ['setUp'], setUp === 'right-handed' ? undefined : setUp);
  const handed = lesson.exercises.filter(isSticked).map(({ number }) => number);
  return changeExercises(sided, lesson, handed, handsMirrored, inUse);
}

/** The text with a setting of the sheet. */
export function setSheet<K extends keyof SheetSettings>(
  text: string,
  key: K,
  value: SheetSettings[K],
): string {
  return editLesson(text, ['sheet', key], value);
}

/** The title that a text gives itself, also where the rest of it cannot be read. */
export function titleOf(text: string): string | null {
  const title = parseDocument(text).get('title');
  return typeof title === 'string' && title.trim() !== '' ? title : null;
}
