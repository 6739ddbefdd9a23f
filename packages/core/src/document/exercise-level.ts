/** Writing how loud a voice is where an exercise plays it. */
import type { Voice } from '../kit/voice.ts';
import { sectionsOf } from '../lesson/section.ts';
import { LeadDb } from '../units.ts';
import { editLesson, sectionPath } from './edit.ts';
import { parseLesson } from './parse.ts';

/**
 * The text of a lesson in which a voice has a level in the exercises of a section (the first, which is the whole of a
 * lesson that is not divided, when left out), in dB relative to the lead voice, whatever the levels in the file count
 * from.
 * @throws SyntaxError when the text is not YAML: check it first.
 */
export function setExerciseLevel(text: string, voice: Voice, levelDb: LeadDb, section = 0): string {
  const path = [...sectionPath(text, section), 'exerciseBalance', voice];
  const write = (writtenDb: number) => editLesson(text, path, writtenDb);
  const { lesson } = parseLesson(write(levelDb), 'lesson');
  const readDb = (lesson && sectionsOf(lesson)[section]?.exerciseBalance[voice]) ?? levelDb;
  return write(LeadDb(levelDb + levelDb - readDb));
}
