/** The sheet that a view is written on, and what stands at its head. */
import type { ReactNode } from 'react';
import styles from './paper.module.css';

interface PaperProps {
  readonly className?: string | undefined;
  readonly children: ReactNode;
}

/** A sheet of paper. */
export function Paper({ className, children }: PaperProps) {
  return <article className={`${styles.paper} ${className ?? ''}`.trim()}>{children}</article>;
}

interface ViewHeadProps {
  readonly title: string;
  readonly lead?: string | undefined;
  /** Whether what follows keeps its own distance. */
  readonly isClose?: boolean;
}

/** The name of a view, and a sentence on it. */
export function ViewHead({ title, lead, isClose = false }: ViewHeadProps) {
  return (
    <header className={styles.head} data-close={isClose || undefined}>
      <h2>{title}</h2>
      {lead !== undefined && <p>{lead}</p>}
    </header>
  );
}
