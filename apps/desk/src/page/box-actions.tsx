/** Buttons side by side in the pencil box. */
import type { ReactNode } from 'react';
import styles from './box-actions.module.css';

/** The row. */
export function BoxActions({ children }: { readonly children: ReactNode }) {
  return <div className={styles.actions}>{children}</div>;
}
