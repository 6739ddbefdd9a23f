/** The recordings of a student that were heard on the desk, last first: each with its sentences and picture. */
import {
  defaultForm,
  exerciseKey,
  exerciseLabel,
  formNamed,
  type PracticeEntry,
  type PracticeLog,
  sectionOf,
} from '@shedbook/core';
import { judge, type Level } from '@shedbook/judge';
import { Suspense, useMemo, useState } from 'react';
import { lazily } from '../loading/later.ts';
import { useWhen } from '../shared/use-when.ts';
import { useWords } from '../words/students-words.tsx';
import styles from './brought-in.module.css';
import type { KeptReport } from './kept-log.ts';
import type { DeskShelf } from './take-in.ts';

const HeardReport = lazily(
  () => import('../takes/heard-report.tsx'),
  (module) => module.HeardReport,
);

interface HeardTakesProps {
  readonly reports: readonly KeptReport[];
  readonly log: PracticeLog;
  readonly shelf: readonly DeskShelf[];
  readonly level: Level;
}

interface OneProps extends Omit<HeardTakesProps, 'reports' | 'log'> {
  readonly kept: KeptReport;
  readonly entry: PracticeEntry;
}

function One({ kept: { report }, entry, shelf, level }: OneProps) {
  const words = useWords().takes;
  const when = useWhen();
  const [isOpen, setOpen] = useState(false);
  const lesson = shelf.find(({ id }) => id === entry.lesson)?.lesson;
  const exercise = lesson?.exercises.find((each) => exerciseKey(each) === entry.exercise);
  const judgement = useMemo(() => {
    if (!isOpen || !lesson || !exercise) return null;
    const section = sectionOf(lesson, exercise.number);
    const form = formNamed(section, entry.form) ?? defaultForm(section);
    return judge({ lesson, exercise: exercise.number, form }, { report }, level);
  }, [isOpen, lesson, exercise, entry, report, level]);
  const title = words.title({
    lesson: lesson?.title ?? entry.lesson,
    exercise: exercise ? (exercise.name ?? exerciseLabel(exercise.number)) : '?',
  });
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        {title}, {when(entry.startedAt)}
      </summary>
      {isOpen && !exercise && <p className="quiet">{words.gone}</p>}
      {judgement && (
        <Suspense>
          <HeardReport {...{ report, judgement, title }} />
        </Suspense>
      )}
    </details>
  );
}

/** The list; nothing where none was heard. */
export function HeardTakes({ reports, log, shelf, level }: HeardTakesProps) {
  const words = useWords().takes;
  const found = reports.flatMap((kept) => {
    const entry = log.entries.find(({ id }) => id === kept.of);
    return entry ? [{ kept, entry }] : [];
  });
  if (found.length === 0) return null;
  return (
    <section className={styles.takings} aria-label={words.of} data-part="heard-takes">
      <h3>{words.of}</h3>
      {found.toReversed().map(({ kept, entry }) => (
        <One key={kept.of} {...{ kept, entry, shelf, level }} />
      ))}
    </section>
  );
}
