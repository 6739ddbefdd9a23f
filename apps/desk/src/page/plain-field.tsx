/** Text that looks printed and can be written over. */
import { classes } from '@shedbook/stand';
import { useDraft } from '../shared/use-draft.ts';
import styles from './plain-field.module.css';

interface PlainFieldProps {
  readonly label: string;
  /** What stands there while nothing is written; the label when left out. */
  readonly placeholder?: string;
  readonly value: string;
  readonly className?: string | undefined;
  readonly onKeep: (value: string) => void;
}

/** A line. */
export function PlainField({ label, placeholder = label, value, className, onKeep }: PlainFieldProps) {
  const { field } = useDraft(value, onKeep);
  return (
    <input
      {...field}
      className={classes(styles.plain, className)}
      aria-label={label}
      placeholder={placeholder}
      onKeyDown={(event) => {
        if (event.key === 'Enter') event.currentTarget.blur();
        else field.onKeyDown(event);
      }}
    />
  );
}

/** A few lines, as high as what is written in them. */
export function PlainText({ label, value, className, onKeep }: PlainFieldProps) {
  const { field } = useDraft(value, onKeep);
  const lines = Math.min(12, Math.max(1, field.value.split('\n').length));
  return (
    <textarea
      {...field}
      rows={lines}
      className={classes(styles.plain, styles.text, className)}
      aria-label={label}
      placeholder={label}
    />
  );
}
