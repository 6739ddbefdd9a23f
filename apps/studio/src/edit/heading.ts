/** Changing what stands above the exercises. */
import { editLesson, type SheetSettings } from '@shedbook/core';
import { parseDocument } from 'yaml';

/** The text with another title. */
export function setTitle(text: string, title: string): string {
  return editLesson(text, ['title'], title);
}

/** The text with another name under the title, or none. */
export function setBy(text: string, by: string): string {
  return editLesson(text, ['by'], by === '' ? undefined : by);
}

/** The text with other tempi, in quarter notes a minute. */
export function setTempo(text: string, startBpm: number, goalBpm: number, stepBpm: number): string {
  return editLesson(text, ['tempo'], { start: startBpm, goal: goalBpm, step: stepBpm });
}

/** The text with another feel. */
export function setFeel(text: string, feel: string): string {
  return editLesson(text, ['feel'], feel);
}

/** The text with another meter. */
export function setMeter(text: string, meter: string): string {
  return editLesson(text, ['meter'], meter);
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
