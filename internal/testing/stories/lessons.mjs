/** The lessons that stories are of: those of the demo, and some that were written for stories. */
import { existsSync, readFileSync } from 'node:fs';
import { parseLesson } from '@shedbook/core';

const DEMO = new URL('../../../demo/', import.meta.url);
const OWN = new URL('./', import.meta.url);
/** The lesson of a story that names none. */
const FIRST = 'first-swing';

const known = new Map();

/** The lesson of a sheet by the name of its file. */
export function sheetNamed(sheet = FIRST) {
  const file = `${sheet}.lesson.yaml`;
  const own = new URL(file, OWN);
  const lesson =
    known.get(sheet) ??
    parseLesson(readFileSync(existsSync(own) ? own : new URL(file, DEMO), 'utf8'), file).lesson;
  known.set(sheet, lesson);
  return lesson;
}
