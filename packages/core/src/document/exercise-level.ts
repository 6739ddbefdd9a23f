/** Writing how loud a voice is where an exercise plays it. */
import type { Voice } from '../kit/voice.ts';
import { LeadDb } from '../units.ts';
import { editLesson } from './edit.ts';
import { parseLesson } from './parse.ts';

/**
 * The text of a lesson in which a voice has a level in exercises, in dB relative to the lead voice, whatever the levels in
 * the file count from.
 * @throws SyntaxError when the text is not YAML: check it first.
 */
export function setExerciseLevel(text: string, voice: Voice, levelDb: LeadDb): string {
  const write = (writtenDb: number) => editLesson(text, ['exerciseBalance', voice], writtenDb);
  const readDb = parseLesson(write(levelDb), 'lesson').lesson?.exerciseBalance[voice] ?? levelDb;
  return write(LeadDb(levelDb + levelDb - readDb));
}
