/**
 * Reading a lesson file: text in, lesson and every problem out.
 *
 * Conventions: problems are in order of place. There is a lesson only when there is no error; warnings do not
 * stop it.
 */
import { type Document, LineCounter, parseDocument } from 'yaml';
import type { Lesson } from '../lesson/lesson.ts';
import type { LessonFact } from '../lesson/lesson-fact.ts';
import type { LookAtMedium } from '../lesson/media.ts';
import { findConflicts } from './conflicts.ts';
import type { Fault, Report } from './fault.ts';
import { type FieldPath, formatPath } from './field-path.ts';
import { createLocator, type Locator } from './locate.ts';
import { type LessonData, migrate } from './migrate.ts';
import { type InputProblem, MOST_PROBLEMS } from './problem.ts';
import { resolveLesson } from './resolve.ts';
import { LESSON_VERSION } from './schema.ts';
import { shapeLesson } from './shape.ts';
import { yamlProblems } from './yaml-problems.ts';

/** A problem of a lesson file. */
export type LessonProblem = InputProblem<LessonFact>;

/** What came of reading a lesson file. */
export interface LessonReading {
  /** Null when there is an error. */
  readonly lesson: Lesson | null;
  readonly problems: readonly LessonProblem[];
}

/** A fault at its place in the text. */
export function locate(fault: Fault, locator: Locator, file: string): LessonProblem {
  const path: FieldPath = fault.path;
  const place = fault.onKey ? locator.key(path) : locator.value(path, fault.offset ?? 0);
  return {
    code: fault.code,
    severity: fault.severity ?? 'error',
    file,
    ...place,
    path: formatPath(path),
    found: fault.found,
    expected: fault.expected,
    repair: fault.repair ?? null,
  };
}

/** Whether data is of a version that there was; what is not stays as it is, to be refused. */
function isOfAnyVersion(data: unknown): data is LessonData {
  if (typeof data !== 'object' || data === null || Array.isArray(data)) return false;
  const { version = LESSON_VERSION } = data as LessonData;
  return Number.isSafeInteger(version) && (version as number) >= 1;
}

function toPlain(document: Document): unknown {
  const data: unknown = document.toJS();
  return isOfAnyVersion(data) ? migrate(data, LESSON_VERSION) : data;
}

/** UTF-16 code units of a lesson file at most. */
export const LONGEST_LESSON = 1_000_000;

/** Values of a lesson at most: with a thousand exercises in full there are a tenth of them. */
const MOST_VALUES = 60_000;

function tooLong(file: string, expected: LessonFact): readonly LessonProblem[] {
  const place = { file, line: 1, column: 1, path: '' };
  return [
    { code: 'too-long', severity: 'error', ...place, found: { fact: 'a-text' }, expected, repair: null },
  ];
}

/** What is wrong with a text that is longer than any lesson or book; nothing with others. */
export function lengthProblems(text: string, file: string): readonly LessonProblem[] {
  return text.length > LONGEST_LESSON
    ? tooLong(file, { fact: 'characters-up-to', most: LONGEST_LESSON })
    : [];
}

/** How many values there are in a value, itself and those of aliases counted wherever they stand. */
function countValues(value: unknown, most: number): number {
  if (value === null || typeof value !== 'object') return 1;
  let count = 1;
  for (const each of Object.values(value)) {
    count += countValues(each, most - count);
    if (count > most) return count;
  }
  return count;
}

/** What is wrong with data of more values than any lesson or book has; nothing with other data. */
export function valueProblems(data: unknown, file: string): readonly LessonProblem[] {
  return countValues(data, MOST_VALUES) > MOST_VALUES
    ? tooLong(file, { fact: 'items-up-to', most: MOST_VALUES })
    : [];
}

/**
 * Reads a lesson.
 * @param file name for messages
 * @param look what is asked of the files that it shows; nothing where left out
 * @returns the lesson (null when there is an error) and its problems in order of place, as many as are told at most.
 */
export function parseLesson(text: string, file: string, look: LookAtMedium = () => null): LessonReading {
  const length = lengthProblems(text, file);
  if (length.length > 0) return { lesson: null, problems: length };
  const lines = new LineCounter();
  const document = parseDocument(text, { lineCounter: lines, prettyErrors: true, uniqueKeys: false });
  const broken = yamlProblems(document, lines, file);
  if (broken.length > 0) return { lesson: null, problems: broken };
  const plain = toPlain(document);
  const values = valueProblems(plain, file);
  if (values.length > 0) return { lesson: null, problems: values };
  const locator = createLocator(document, text, lines);
  const problems: LessonProblem[] = [];
  let failed = false;
  const report: Report = (fault) => {
    const isFirstError = !failed && fault.severity !== 'warning';
    failed ||= isFirstError;
    if (problems.length === MOST_PROBLEMS && isFirstError) problems.pop();
    if (problems.length < MOST_PROBLEMS) problems.push(locate(fault, locator, file));
  };
  const shaped = shapeLesson(plain);
  for (const fault of shaped.faults) report(fault);
  const resolved = resolveLesson(shaped.lesson, look, report);
  const isSound = !failed;
  if (isSound) for (const fault of findConflicts(resolved)) report(fault);
  problems.sort((a, b) => a.line - b.line || a.column - b.column);
  return { lesson: isSound ? resolved.lesson : null, problems };
}
