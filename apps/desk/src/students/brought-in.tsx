/** What was brought in of a student's practice, day by day and file by file, each with a way out again. */

import { Button, Icon } from '@shedbook/stand';
import { useWhen } from '../shared/use-when.ts';
import { useWords } from '../words/students-words.tsx';
import styles from './brought-in.module.css';
import type { Taking } from './kept-log.ts';

interface BroughtInProps {
  /** Last first. */
  readonly takings: readonly Taking[];
  /** Takes out what was brought in at a moment. */
  readonly onTakeOut: (takenAt: string, entries: number) => void;
}

/** The list, folded away; nothing where nothing was brought in. */
export function BroughtIn({ takings, onTakeOut }: BroughtInProps) {
  const words = useWords().students;
  const when = useWhen();
  if (takings.length === 0) return null;
  return (
    <details className={styles.takings}>
      <summary>{words.broughtIn}</summary>
      <ul>
        {takings.map(({ takenAt, rows }) => (
          <li key={takenAt}>
            <span>{words.broughtInAt({ when: when(takenAt), n: rows })}</span>
            <Button
              dress="bare"
              aria-label={words.takeOutLog({ when: when(takenAt) })}
              onClick={() => onTakeOut(takenAt, rows)}
            >
              <Icon name="bin" />
            </Button>
          </li>
        ))}
      </ul>
    </details>
  );
}
