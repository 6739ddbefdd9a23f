/** Adding what a student brings: a recording, a practice log, or the report of a take and of what it is. */

import { EMPTY_LOG, type LogReading } from '@shedbook/coach';
import { exerciseKey, type PracticeLog, type TakeReport, textMark } from '@shedbook/core';
import type { StoredStudent } from '@shedbook/routes';
import { askWorker, FileButton, Icon, momentFrom, useSay as useNotice } from '@shedbook/stand';
import { Suspense, useEffect, useState } from 'react';
import { lazily } from '../loading/later.ts';
import { isTakeFile, TAKE_FILES, useDropped, waitingFile } from '../takes/dropped.ts';
import type { HeardOf } from '../takes/take-form.tsx';
import { useSay, useWords } from '../words/students-words.tsx';
import styles from './bring-in.module.css';
import type { BroughtOrder } from './brought.worker.ts';
import BroughtWorker from './brought.worker.ts?worker';
import { ExercisePicker } from './exercise-picker.tsx';
import type { KeptReport } from './kept-log.ts';
import type { DeskText } from './own-lesson.ts';
import { type Brought, withDeskLessons, withTake } from './take-in.ts';

const TakeForm = lazily(
  () => import('../takes/take-form.tsx'),
  (module) => module.TakeForm,
);

interface BringInProps {
  readonly shelf: readonly DeskText[];
  /** Whose it is. */
  readonly student: StoredStudent;
  /** What is kept of the student already. */
  readonly known: PracticeLog;
  /** Told what came; @returns whether it is kept */
  readonly onLog: (log: PracticeLog, reports?: readonly KeptReport[]) => Promise<boolean>;
}

/** The name of a recording that was heard here: the same report is the same recording. */
function recordingId(report: TakeReport): string {
  return `recording ${textMark(JSON.stringify(report))}`;
}

type BroughtReport = Extract<Brought, { kind: 'report' }> & { readonly startedAt: string };

/** Milliseconds that reading a file takes at most: many times what years of practice take. */
const DEADLINE_MS = 60_000;

/** Reads a file in a thread of its own; null where that takes too long. */
function readBeside(file: File): Promise<Brought | null> {
  const order: BroughtOrder = { file, name: file.name };
  const terms = { deadlineMs: DEADLINE_MS };
  return askWorker<Brought | null>(new BroughtWorker(), order, terms).catch(() => null);
}

/** A button for the file; a report asks which exercise it is of. */
export function BringIn({ shelf, student, known, onLog }: BringInProps) {
  const { level, name, assignments } = student;
  const words = useWords();
  const say = useSay();
  const notice = useNotice();
  const [report, setReport] = useState<BroughtReport | null>(null);
  const [recording, setRecording] = useState<File | null>(null);
  const take = async (log: PracticeLog, told: string) => {
    if (await onLog(withDeskLessons(log, shelf, known))) notice(told);
  };
  const wordsOf = (problems: LogReading['problems']) => {
    const [first] = problems;
    return first ? words.page.found({ found: say(first.found), expected: say(first.expected) }) : '';
  };
  const takeIn = async (file: File) => {
    if (isTakeFile(file)) {
      setRecording(file);
      return;
    }
    const brought = await readBeside(file);
    if (!brought) {
      notice(words.students.tooMuch({ file: file.name }));
    } else if (brought.kind === 'report') {
      setReport({ ...brought, startedAt: momentFrom(new Date(file.lastModified)) });
    } else if (brought.kind === 'log') {
      await take(brought.log, words.students.tookIn({ n: brought.log.entries.length }));
    } else if (brought.kind === 'partly') {
      const partly = words.students.partly({ file: file.name, n: brought.log.entries.length });
      await take(brought.log, `${partly} ${wordsOf(brought.problems)}`);
    } else {
      notice(`${words.students.unreadable({ file: file.name })} ${wordsOf(brought.problems)}`);
    }
  };
  useDropped((file) => void takeIn(file));
  useEffect(() => {
    const dropped = waitingFile();
    if (dropped) setRecording(dropped);
  }, []);
  const keep = async ({ lesson, ...heard }: HeardOf, file: File) => {
    const id = recordingId(heard.report);
    const startedAt = momentFrom(new Date(file.lastModified));
    const log = withTake(EMPTY_LOG, { ...heard, id, startedAt, shelf: lesson }, level);
    if (!(await onLog(log, [{ of: id, report: heard.report }]))) return;
    setRecording(null);
    notice(words.takes.kept({ name }));
  };
  const [set] = assignments;
  const likely = shelf
    .find(({ id }) => id === set?.lesson)
    ?.lesson.exercises.find((each) => exerciseKey(each) === set?.exercise);
  return (
    <section className={styles.bringIn} aria-label={words.students.bringIn}>
      <FileButton
        accept={[...TAKE_FILES, '.json', 'application/json', '.zip', 'application/zip']}
        onFile={(file) => void takeIn(file)}
      >
        <Icon name="file" />
        {words.students.bringIn}
      </FileButton>
      <p className="quiet">{words.students.bringInHint}</p>
      {recording && (
        <Suspense>
          <TakeForm
            key={`${recording.name} ${recording.lastModified}`}
            {...{ shelf, level, name }}
            file={recording}
            likely={likely && set ? { lesson: set.lesson, exercise: likely.number } : null}
            onKeep={(heard) => void keep(heard, recording)}
            onClose={() => setRecording(null)}
          />
        </Suspense>
      )}
      {report && (
        // biome-ignore lint/a11y/useSemanticElements: a fieldset has a layout of its own
        <div className={styles.whichExercise} role="group" aria-label={words.students.whichExercise}>
          <p>{words.students.whichExercise}</p>
          <ExercisePicker
            shelf={shelf}
            action={words.students.takeIn}
            onPick={(each, exercise) => {
              const log = withTake(EMPTY_LOG, { ...report, shelf: each, exercise }, level);
              setReport(null);
              void take(log, words.students.tookIn({ n: 1 }));
            }}
          />
        </div>
      )}
    </section>
  );
}
