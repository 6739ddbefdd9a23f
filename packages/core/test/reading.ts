/** What the tests of the document share: a lesson as it is read, or what is wrong with its text. */
import { inEnglish } from '../../../internal/testing/in-english.ts';
import { parseLesson } from '../src/document/parse.ts';
import type { Lesson } from '../src/lesson/lesson.ts';

/** The name that problems give to the text. */
export const FILE = 'x.lesson.yaml';

/** The lesson of a text. @throws Error with everything that is wrong with it */
export function read(text: string): Lesson {
  const { lesson, problems } = parseLesson(text, FILE);
  if (!lesson) throw new Error(problems.map(inEnglish).join('\n'));
  return lesson;
}

/** What is wrong with a text, each with its line and column. */
export function problemsOf(text: string): readonly string[] {
  return parseLesson(text, FILE).problems.map((problem) => inEnglish(problem).replace(`${FILE}:`, ''));
}
