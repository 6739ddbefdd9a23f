/** Taking in a file that a student brings: a practice log, or the report of a take and of what it is. */

import { EMPTY_LOG, type LogReading } from '@shedbook/coach';
import type { PracticeLog } from '@shedbook/core';
import type { Level } from '@shedbook/judge';
import { FileButton, Icon, momentFrom, useSay as useNotice } from '@shedbook/stand';
import { useState } from 'react';
import { useSay, useWords } from '../words/words.tsx';
import styles from './bring-in.module.css';
import { ExercisePicker } from './exercise-picker.tsx';
import { type Brought, type DeskShelf, readBroughtFile, withDeskLessons, withTake } from './take-in.ts';

interface BringInProps {
  readonly shelf: readonly DeskShelf[];
  /** By which a report is judged. */
  readonly level: Level;
  /** What is kept of the student already. */
  readonly known: PracticeLog;
  /** Told what came; @returns whether it is kept */
  readonly onLog: (log: PracticeLog) => Promise<boolean>;
}

type BroughtReport = Extract<Brought, { kind: 'report' }> & { readonly startedAt: string };

/** A button for the file; a report asks which exercise it is of. */
export function BringIn({ shelf, level, known, onLog }: BringInProps) {
  const words = useWords();
  const say = useSay();
  const notice = useNotice();
  const [report, setReport] = useState<BroughtReport | null>(null);
  const take = async (log: PracticeLog, told: string) => {
    if (await onLog(withDeskLessons(log, shelf, known))) notice(told);
  };
  const wordsOf = (problems: LogReading['problems']) => {
    const [first] = problems;
    return first ? words.page.found({ found: say(first.found), expected: say(first.expected) }) : '';
  };
  const takeIn = async (file: File) => {
    const brought = readBroughtFile(new Uint8Array(await file.arrayBuffer()), file.name);
    if (brought.kind === 'report') {
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
  return (
    <section className={styles.bringIn} aria-label={words.students.bringIn}>
      <FileButton
        accept={['.json', 'application/json', '.zip', 'application/zip']}
        onFile={(file) => void takeIn(file)}
      >
        <Icon name="file" />
        {words.students.bringIn}
      </FileButton>
      <p className="quiet">{words.students.bringInHint}</p>
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
