/** What a list shows of a lesson, out of its text: made once for a revision, since reading a text takes milliseconds. */
import { type LessonNames, namesOf } from '@shedbook/coach';
import { type Lesson, parseLesson, sectionOf, sectionsOf, styleOf } from '@shedbook/core';
import type { LessonSummary } from '@shedbook/routes';
import { checksumOf, isAsWritten } from './checksum.ts';

/** Rises whenever a summary is made in another way, so that those that are kept are made anew. */
const VERSION = 1;

/** What the text of a lesson says to a list. */
export type Summary = Pick<
  LessonSummary,
  'title' | 'by' | 'exercises' | 'errors' | 'style' | 'finds' | 'plays'
> & {
  readonly version: number;
  /** What it and its exercises are called by; null where it cannot be read. */
  readonly names: LessonNames | null;
};

function titleOf(text: string): string | null {
  const [, title] = /^title:[ \t]*(\S.*)$/m.exec(text) ?? [];
  return title === undefined ? null : title.trim().replace(/^(["'])(.*)\1$/, '$2');
}

function findsOf(lesson: Lesson): string {
  const headings = sectionsOf(lesson).flatMap(({ heading }) => heading ?? []);
  const names = lesson.exercises.flatMap(({ name }) => name ?? []);
  return [...new Set([lesson.meter.text, ...headings, ...names])].join('\n');
}

/** The same for lessons that play the same exercises over the same grooves, whatever they are called. */
function playsOf({ sections }: LessonNames): string | null {
  const played = sections.map(({ over, exercises }) => [over, exercises.map(({ patterns }) => patterns)]);
  return sections.every(({ exercises }) => exercises.length === 0)
    ? null
    : checksumOf(JSON.stringify(played));
}

const NOTHING = { by: null, exercises: 0, style: null, finds: '', plays: null, names: null } as const;

/** The summary of a text. */
export function summarise(text: string): Summary {
  const { lesson, problems } = parseLesson(text, 'lesson');
  const errors = problems.filter(({ severity }) => severity === 'error').length;
  if (!lesson) return { version: VERSION, title: titleOf(text), errors, ...NOTHING };
  const names = namesOf(lesson);
  return {
    ...{ version: VERSION, title: lesson.title, by: lesson.by, errors, names },
    exercises: lesson.exercises.length,
    style: styleOf(sectionOf(lesson, null)),
    finds: findsOf(lesson),
    plays: playsOf(names),
  };
}

/** Sums up the text of a lesson. @param of whose order it is: a lesson */
export type SumUp = (text: string, of: string) => Promise<Summary>;

/** Sums up at once. */
export const sumUpAtOnce: SumUp = async (text) => summarise(text);

/** The summary of a text that takes more to read than any lesson does. */
export function unreadSummary(text: string): Summary {
  return { version: VERSION, title: titleOf(text), errors: 1, ...NOTHING };
}

/** A summary as it is kept: its checksum, and itself as JSON. */
export function writeSummary(summary: Summary): string {
  const json = JSON.stringify(summary);
  return `${checksumOf(json)} ${json}`;
}

/** A summary that was kept; null where it was made in another way, or is not as it was written. */
export function readSummary(kept: string | null): Summary | null {
  const [, checksum = '', json = ''] = /^(\w+) (.*)$/s.exec(kept ?? '') ?? [];
  if (json === '' || !isAsWritten(json, checksum)) return null;
  const summary = JSON.parse(json) as Summary;
  return summary.version === VERSION ? summary : null;
}
