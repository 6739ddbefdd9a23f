/** A value on a line. */
import { useEffect, useId, useRef } from 'react';
import { classes } from './classes.ts';
import styles from './range.module.css';

interface LineProps {
  /** What the value means, in words. */
  readonly says: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly step?: number;
  /** With every move. */
  readonly onChange?: (value: number) => void;
  /** When the line is let go. */
  readonly onChangeEnd?: (value: number) => void;
}

interface SlideProps extends LineProps {
  readonly label?: string;
  readonly id?: string;
}

/** The line alone; its label is heard and not seen. */
export function Slide({ label, says, onChange, onChangeEnd, ...rest }: SlideProps) {
  const line = useRef<HTMLInputElement>(null);
  const end = useRef(onChangeEnd);
  end.current = onChangeEnd;
  useEffect(() => {
    const element = line.current;
    const letGo = () => end.current?.(element?.valueAsNumber ?? 0);
    element?.addEventListener('change', letGo);
    return () => element?.removeEventListener('change', letGo);
  }, []);
  return (
    <input
      {...rest}
      ref={line}
      type="range"
      className={styles.line}
      aria-label={label}
      aria-valuetext={says}
      onChange={(event) => onChange?.(event.target.valueAsNumber)}
    />
  );
}

interface RangeProps extends LineProps {
  readonly label: string;
  /** Puts what the value means under its label, where there is little room. */
  readonly isNarrow?: boolean;
}

/** The line with its label and what it says. */
export function Range({ label, says, isNarrow = false, ...rest }: RangeProps) {
  const id = useId();
  return (
    <div className={classes(styles.range, isNarrow && styles.narrow)}>
      <label htmlFor={id}>{label}</label>
      <output htmlFor={id}>{says}</output>
      <Slide {...rest} says={says} id={id} />
    </div>
  );
}
