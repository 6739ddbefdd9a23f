/** The head of a screen: its name, a sentence on it, and what can be done. */
import type { ReactNode } from 'react';
import styles from './screen-head.module.css';

interface ScreenHeadProps {
  readonly title: string;
  readonly lead: string;
  /** The buttons. */
  readonly children: ReactNode;
}

/** The head. */
export function ScreenHead({ title, lead, children }: ScreenHeadProps) {
  return (
    <header className={styles.head}>
      <div>
        <h1>{title}</h1>
        <p>{lead}</p>
      </div>
      <div className={styles.actions}>{children}</div>
    </header>
  );
}

/** What is said where there is nothing yet. */
export function NothingYet({ children }: { readonly children: ReactNode }) {
  return <p className={styles.empty}>{children}</p>;
}
