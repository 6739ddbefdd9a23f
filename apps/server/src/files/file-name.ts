/** File names for what a lesson is taken away as. */
import { fileNameOf, parseLesson } from '@shedbook/core';

/** The file name of a lesson's text, with an ending such as `.pdf`. */
export function fileNameOfText(text: string, ending: string): string {
  return fileNameOf(parseLesson(text, 'lesson').lesson?.title ?? null, ending);
}
