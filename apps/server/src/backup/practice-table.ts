/** Practice as a table: a line for each stretch of playing, the newest entry of each. */

import { type LessonNames, logOfRows } from '@shedbook/coach';
import { exerciseLabel, firstNumbers, LOOP_VERDICTS, type PracticeEntry } from '@shedbook/core';
import type { CliWords } from '@shedbook/words';
import type { LessonStore } from '../store/lessons.ts';
import type { StudentStore } from '../store/students.ts';
import { type Cell, CSV_START, csvLine } from './csv.ts';

/** What a table is made with. */
export interface TableParts {
  readonly store: LessonStore;
  readonly students: StudentStore;
  readonly words: CliWords['practiceTable'];
}

/** What a lesson is called, and the numbers of its exercises, as people read them, by their lasting names. */
interface Named {
  readonly title: string;
  readonly numbers: ReadonlyMap<string, string>;
}

function numbersIn({ sections, anew }: LessonNames): Named['numbers'] {
  const counts = sections.map(({ exercises }) => exercises.length);
  const firsts = firstNumbers(counts, anew ? 'anew' : 'through');
  return new Map(
    sections.flatMap(({ exercises }, section) =>
      exercises.map(({ key }, at) => [key, exerciseLabel((firsts[section] ?? 1) + at)] as const),
    ),
  );
}

async function lessonNames(store: LessonStore): Promise<ReadonlyMap<string, Named>> {
  const named = new Map<string, Named>();
  for (const { summary, names } of await store.shelf()) {
    if (!names || summary.title === null) continue;
    named.set(summary.id, { title: summary.title, numbers: numbersIn(names) });
  }
  return named;
}

/** Everything that a student practised, in order of time. */
async function entriesOf(students: StudentStore, id: string): Promise<readonly PracticeEntry[]> {
  return logOfRows(await students.rows(id)).entries;
}

function cellsOf(
  entry: PracticeEntry,
  named: Named | undefined,
  words: TableParts['words'],
): readonly Cell[] {
  const tempi = entry.loops.map(({ bpm }) => bpm);
  const counts = LOOP_VERDICTS.map((each) => entry.loops.filter(({ verdict }) => verdict === each).length);
  const number = entry.exercise === null ? null : (named?.numbers.get(entry.exercise) ?? null);
  return [
    entry.startedAt.slice(0, 10),
    entry.startedAt.slice(11, 16),
    Math.round(entry.durationSeconds),
    named?.title ?? entry.lesson,
    number,
    entry.exercise ?? words.groove,
    entry.form,
    words.heardBy[entry.heardBy],
    tempi.length === 0 ? null : Math.min(...tempi),
    tempi.length === 0 ? null : Math.max(...tempi),
    entry.loops.length,
    ...counts.toReversed(),
  ];
}

/** Whose practice a table is of. */
export interface TableOf {
  readonly teacher: string;
  /** One of their students; all of them where it is left out. */
  readonly student: string | undefined;
}

/** The bytes of the table of everybody's practice on a teacher's roster, or of one student's. */
export async function* practiceTable(
  { store, students, words }: TableParts,
  { teacher, student }: TableOf,
): AsyncGenerator<Uint8Array> {
  const { name, columns } = words;
  const { day, time, seconds, lesson, exercise, plays, form, heard, slowest, fastest, rounds } = columns;
  const head = [name, day, time, seconds, lesson, exercise, plays, form, heard, slowest, fastest, rounds];
  const { clean, loose, stumble, unheard } = columns;
  yield Buffer.from(CSV_START + csvLine([...head, clean, loose, stumble, unheard]));
  const names = await lessonNames(store);
  const wanted = (await students.names(teacher)).filter(({ id }) => student === undefined || id === student);
  for (const each of wanted) {
    const entries = await entriesOf(students, each.id);
    const lines = entries.map((entry) =>
      csvLine([each.name, ...cellsOf(entry, names.get(entry.lesson), words)]),
    );
    if (lines.length > 0) yield Buffer.from(lines.join(''));
  }
}
