/** A part of the page that is folded until it is wanted. */
import type { ReactNode } from 'react';
import styles from './folded.module.css';

interface FoldedProps {
  readonly title: string;
  /** Its name for whoever looks for it on the page. */
  readonly part: string;
  readonly children: ReactNode;
}

/** The part under its title. */
export function Folded({ title, part, children }: FoldedProps) {
  return (
    <details className={styles.folded} data-part={part}>
      <summary>
        <h2>{title}</h2>
      </summary>
      {children}
    </details>
  );
}
