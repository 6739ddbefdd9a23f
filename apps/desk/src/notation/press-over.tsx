/** A drawing that can be pressed: the button lies over it, so that what is drawn is no part of its name. */
import type { MouseEvent, ReactNode } from 'react';
import styles from './press-over.module.css';

interface PressOverProps {
  readonly label: string;
  readonly className?: string | undefined;
  readonly isLong?: boolean;
  readonly onPress: (event: MouseEvent<HTMLButtonElement>) => void;
  readonly children: ReactNode;
}

/** The drawing and the button; keys reach what it does elsewhere. */
export function PressOver({ label, className, isLong = false, onPress, children }: PressOverProps) {
  return (
    <div className={`${styles.drawing} ${className ?? ''}`.trim()} data-long={isLong || undefined}>
      {children}
      <button
        type="button"
        className={styles.press}
        data-part="resting-press"
        tabIndex={-1}
        aria-label={label}
        onClick={onPress}
      />
    </div>
  );
}
