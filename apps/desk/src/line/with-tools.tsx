/** What is written, and its tools: beside it, or along the lower edge where there is no room. */
import type { ReactNode } from 'react';
import { useMedia } from './use-width.ts';
import styles from './with-tools.module.css';

/** Wide enough for the tools to lie beside what is written. */
const WIDE = '(min-width: 1100px)';

/** Whether the tools lie along the lower edge. */
export function useDocked(): boolean {
  return !useMedia(WIDE);
}

interface WithToolsProps {
  readonly tools: ReactNode;
  readonly children: ReactNode;
}

/** Both. */
export function WithTools({ tools, children }: WithToolsProps) {
  return (
    <div className={styles.view}>
      {children}
      <aside className={styles.beside}>{tools}</aside>
    </div>
  );
}
