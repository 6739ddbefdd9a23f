/** The picture that notation is drawn in; what it says is said in words beside it. */
import type { CSSProperties, ReactNode } from 'react';
import styles from './notation.module.css';

interface NotationProps {
  /** Left, top, width and height of what is shown, in units of the drawing. */
  readonly viewBox: string;
  readonly className?: string | undefined;
  readonly style?: CSSProperties;
  readonly children: ReactNode;
}

/** The picture. */
export function Notation({ className, children, ...rest }: NotationProps) {
  return (
    <svg {...rest} className={`${styles.notation} ${className ?? ''}`.trim()} aria-hidden="true">
      {children}
    </svg>
  );
}
