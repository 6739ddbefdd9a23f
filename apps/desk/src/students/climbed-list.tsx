/** What a student climbed, each time round by round, folded away. */
import type { PracticeLog } from '@shedbook/core';
import { useMemo } from 'react';
import { useWhen } from '../shared/use-when.ts';
import { useWords } from '../words/students-words.tsx';
import styles from './brought-in.module.css';
import { climbedOf } from './climbed.ts';
import type { DeskShelf } from './take-in.ts';

interface ClimbedListProps {
  readonly shelf: readonly DeskShelf[];
  readonly log: PracticeLog;
}

/** The list; nothing where nothing climbed. */
export function ClimbedList({ shelf, log }: ClimbedListProps) {
  const words = useWords().students;
  const when = useWhen();
  const climbed = useMemo(() => climbedOf(shelf, log), [shelf, log]);
  if (climbed.length === 0) return null;
  return (
    <details className={styles.takings} data-part="climbed">
      <summary>{words.climbed}</summary>
      {climbed.map(({ id, startedAt, exercise, rounds }) => (
        <section key={id}>
          <p>{words.climbedOn({ when: when(startedAt), exercise })}</p>
          <ol>
            {rounds.map(({ bpm, verdict }, index) => (
              <li key={index}>
                {words.climbedRound({ n: index + 1, bpm, verdict: words.roundVerdicts[verdict] })}
              </li>
            ))}
          </ol>
        </section>
      ))}
    </details>
  );
}
