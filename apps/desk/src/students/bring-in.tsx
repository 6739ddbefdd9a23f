/** Taking in a file that a student brings: a practice log, or the report of a take and of what it is. */

import { mergeLogs } from '@shedbook/coach';
import type { PracticeLog } from '@shedbook/core';
import type { Level } from '@shedbook/judge';
import { FileButton, Icon, momentFrom, useSay as useNotice } from '@shedbook/stand';
import { useState } from 'react';
import { useSay, useWords } from '../words/words.tsx';
import styles from './bring-in.module.css';
import { ExercisePicker } from './exercise-picker.tsx';
import { withoutDoubles } from './take-file.ts';
import { type Brought, type DeskShelf, readBroughtFile, withDeskLessons, withTake } from './take-in.ts';

interface BringInProps {
  readonly shelf: readonly DeskShelf[];
  /** By which a report is judged. */
  readonly level: Level;
  readonly onLog: (change: (log: PracticeLog) => PracticeLog) => void;
}

type BroughtReport = Extract<Brought, { kind: 'report' }> & { readonly startedAt: string };

/** A button for the file; a report asks which exercise it is of. */
export function BringIn({ shelf, level, onLog }: BringInProps) {
  const words = useWords();
  const say = useSay();
  const notice = useNotice();
  const [report, setReport] = useState<BroughtReport | null>(null);
  const takeIn = async (file: File) => {
    const brought = readBroughtFile(new Uint8Array(await file.arrayBuffer()), file.name);
    if (brought.kind === 'report') {
      setReport({ ...brought, startedAt: momentFrom(new Date(file.lastModified)) });
    } else if (brought.kind === 'log') {
      onLog((log) => withoutDoubles(mergeLogs(log, withDeskLessons(brought.log, shelf))));
      notice(words.students.tookIn({ n: brought.log.entries.length }));
    } else {
      const [first] = brought.problems;
      const why = first ? words.page.found({ found: say(first.found), expected: say(first.expected) }) : '';
      notice(`${words.students.unreadable({ file: file.name })} ${why}`);
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
              onLog((log) => withTake(log, { ...report, shelf: each, exercise }, level));
              setReport(null);
              notice(words.students.tookIn({ n: 1 }));
            }}
          />
        </div>
      )}
    </section>
  );
}
