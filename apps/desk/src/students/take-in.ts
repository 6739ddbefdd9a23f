/**
 * What a student brings: a practice log, the file of a take, or only its report. Both end up in the log that the desk keeps of
 * the student, each thing once, however often it is brought.
 */
import { EMPTY_LOG, type LogReading, mergeLogs, parsePracticeLog } from '@shedbook/coach';
import {
  defaultForm,
  type Exercise,
  exerciseKey,
  formNamed,
  jsonIn,
  type Lesson,
  lessonKey,
  type PracticeLog,
  Seconds,
  sectionOf,
  type TakeReport,
  textMark,
} from '@shedbook/core';
import { judge, type Level, recordRound } from '@shedbook/judge';
import { readTakeFile } from './take-file.ts';

/** What a file turned out to be. */
export type Brought =
  | { readonly kind: 'log'; readonly log: PracticeLog }
  /** A log of which some entries cannot be read: the others, and what is wrong. */
  | { readonly kind: 'partly'; readonly log: PracticeLog; readonly problems: LogReading['problems'] }
  | { readonly kind: 'report'; readonly report: TakeReport; readonly id: string }
  | { readonly kind: 'problems'; readonly problems: LogReading['problems'] };

/** Whether a value that came from outside is the report of a take. */
export function isReport(value: unknown): value is TakeReport {
  const { take, alignment, strokes, missed, unheard, notHeard } = (value ?? {}) as Partial<TakeReport>;
  const measured = typeof take?.durationSeconds === 'number' && typeof alignment?.bpm === 'number';
  return measured && [strokes, missed, unheard ?? notHeard].every(Array.isArray);
}

/** Reads a file that a student brings. */
export function readBrought(text: string, file: string): Brought {
  const value = jsonIn(text);
  if (isReport(value)) return { kind: 'report', report: value, id: `report ${textMark(text)}` };
  const { log, soundEntries, problems } = parsePracticeLog(text, file);
  if (log) return { kind: 'log', log };
  const isSomething = soundEntries !== null && soundEntries.entries.length > 0;
  return isSomething ? { kind: 'partly', log: soundEntries, problems } : { kind: 'problems', problems };
}

/** Reads the bytes of a file that a student brings: a log, a report, or the file of a take. */
export function readBroughtFile(bytes: Uint8Array, file: string): Brought {
  const take = readTakeFile(bytes);
  return take ? { kind: 'log', log: take } : readBrought(new TextDecoder().decode(bytes), file);
}

/** A lesson on the desk: its id there, and the lesson. */
export interface DeskShelf {
  readonly id: string;
  readonly lesson: Lesson;
}

/**
 * The log with the lessons named as they are on the desk. A pack names its lesson by the file name of its title; an
 * entry that was taken in before stays with its lesson, whatever that is called by now, and what names no lesson on the
 * desk stays as it is.
 */
export function withDeskLessons(
  log: PracticeLog,
  shelf: readonly DeskShelf[],
  known: PracticeLog = EMPTY_LOG,
): PracticeLog {
  const ids = new Map(shelf.map(({ id, lesson }) => [lessonKey(lesson), id]));
  const before = new Map(known.entries.map(({ id, lesson }) => [id, lesson]));
  const entries = log.entries.map((entry) => ({
    ...entry,
    lesson: before.get(entry.id) ?? ids.get(entry.lesson) ?? entry.lesson,
  }));
  return { ...log, entries };
}

/** One take of an exercise. */
export interface BroughtTake {
  readonly report: TakeReport;
  /** Lasting name of the take. */
  readonly id: string;
  readonly shelf: DeskShelf;
  readonly exercise: Exercise;
  /** A moment. */
  readonly startedAt: string;
  /** Name of the form that was asked for; the one that plays when none is named where left out. */
  readonly form?: string;
}

/** The log with a take in it, its rounds judged for the level of the student. */
export function withTake(log: PracticeLog, take: BroughtTake, level: Level): PracticeLog {
  const { report, id, shelf, exercise, startedAt } = take;
  const section = sectionOf(shelf.lesson, exercise.number);
  const form = (take.form === undefined ? null : formNamed(section, take.form)) ?? defaultForm(section);
  const { rounds } = judge({ lesson: shelf.lesson, exercise: exercise.number, form }, { report }, level);
  const entry = {
    id,
    device: 'report',
    startedAt,
    durationSeconds: Seconds(Math.max(1, Math.round(report.take.durationSeconds))),
    lesson: shelf.id,
    exercise: exerciseKey(exercise),
    form: form.name,
    heardBy: 'ear',
    loops: rounds.map(recordRound),
  } as const;
  return mergeLogs(log, { ...EMPTY_LOG, entries: [entry] });
}
