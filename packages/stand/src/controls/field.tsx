/** A line or a few lines of text, or one of many from a list, each under its label. */
import { type ComponentProps, type ReactNode, useId } from 'react';
import { classes } from './classes.ts';
import styles from './field.module.css';

interface FieldProps extends Omit<ComponentProps<'input'>, 'id'> {
  readonly label: string;
  /** What is wrong with the text, said under it; it is read out as it comes where it interrupts nothing. */
  readonly problem?: ReactNode;
  readonly problemRole?: 'alert';
}

/** A line of text. */
export function Field({ label, problem, problemRole, className, ...rest }: FieldProps) {
  const id = useId();
  const isWrong = Boolean(problem);
  return (
    <div className={classes(styles.field, className)}>
      <label htmlFor={id}>{label}</label>
      <input
        {...rest}
        id={id}
        aria-invalid={isWrong || undefined}
        aria-describedby={isWrong ? `${id}-fault` : undefined}
      />
      {isWrong && (
        <p className={styles.problem} id={`${id}-fault`} role={problemRole}>
          {problem}
        </p>
      )}
    </div>
  );
}

interface LongFieldProps extends Omit<ComponentProps<'textarea'>, 'id'> {
  readonly label: string;
}

/** A few lines of text. */
export function LongField({ label, className, ...rest }: LongFieldProps) {
  const id = useId();
  return (
    <div className={classes(styles.field, className)}>
      <label htmlFor={id}>{label}</label>
      <textarea rows={2} {...rest} id={id} />
    </div>
  );
}

interface SelectProps extends Omit<ComponentProps<'select'>, 'id'> {
  readonly label: string;
}

/** One of many. */
export function Select({ label, className, ...rest }: SelectProps) {
  const id = useId();
  return (
    <div className={classes(styles.field, className)}>
      <label htmlFor={id}>{label}</label>
      <select {...rest} id={id} />
    </div>
  );
}

/** What is wrong, in words. */
export function Problem({ children, ...rest }: ComponentProps<'p'>) {
  return (
    <p {...rest} className={styles.problem}>
      {children}
    </p>
  );
}
