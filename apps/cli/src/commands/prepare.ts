/** `shedbook prepare`: what comes before a section, counted and clapped, written before it. */
import { withPreparation } from '@shedbook/composer';
import { canBePrepared, parseLesson, sectionBefore, sectionsOf } from '@shedbook/core';
import { say } from '@shedbook/words';
import { readLessonFile, requireLesson, requireSection } from '../lesson-file.ts';
import { refused } from '../options.ts';
import type { Speaker } from '../terminal.ts';
import { replaceTextFile, writeTextFile } from '../text-file.ts';

/** What the command line asks for. */
export interface PrepareRequest {
  readonly lesson: string;
  /** Number of the section, from 1; may be left out where there is one. */
  readonly section?: number;
  readonly out?: string;
}

/**
 * Writes a preparation before a section of a lesson, or the lesson with it into another file.
 * @returns the exit status.
 * @throws InputError when the lesson has an error, or the section has something that comes before it already.
 */
export async function prepareCommand(request: PrepareRequest, terminal: Speaker): Promise<number> {
  const { out } = request;
  const file = await readLessonFile(request.lesson);
  const lesson = requireLesson(file, terminal);
  const { section, index } = requireSection(lesson, request.section);
  const { words, language } = terminal.catalogue;
  if (!canBePrepared(section)) throw refused('lesson', request.lesson, (expected) => expected.toPrepare);
  const text = withPreparation(file.text, lesson, index, (fact) => say(fact, language));
  const path = out ?? request.lesson;
  await (out === undefined ? writeTextFile(path, text) : replaceTextFile(out, text, terminal));
  const after = parseLesson(text, path).lesson;
  const made = after && sectionsOf(after)[index + 1];
  const count = (made && after && sectionBefore(after, made)?.exercises.length) ?? 0;
  terminal.say(words.compose.written({ count, file: path }));
  return 0;
}
