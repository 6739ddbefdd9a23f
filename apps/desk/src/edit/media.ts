/** Changing which pictures, sounds and videos stand beside a section or the lesson. */
import { divideOpening, editLesson, type Medium, mediaToData, sectionPath } from '@shedbook/core';

/** Where they stand: beside the lesson (null), or beside a section by its number among all, from 0. */
export type MediaHome = number | null;

/** The text with other files there; exercises outside of a section become one where they are told of. */
export function setMedia(text: string, home: MediaHome, media: readonly Medium[]): string {
  const { media: data } = mediaToData({ media });
  if (home === null) return editLesson(text, ['media'], data);
  const path = sectionPath(text, home);
  if (path.length > 0) return editLesson(text, [...path, 'media'], data);
  return data === undefined ? text : editLesson(divideOpening(text), ['sections', 0, 'media'], data);
}
