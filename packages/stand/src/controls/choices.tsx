/** One of a few, and a box to tick: the browser's own controls, dressed. */
import { type ReactNode, useId } from 'react';
import styles from './choices.module.css';
import field from './field.module.css';

interface ChoicesProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly choices: readonly (readonly [T, string])[];
  readonly onChange: (value: T) => void;
}

/** One of a few. */
export function Choices<T extends string>({ label, value, choices, onChange }: ChoicesProps<T>) {
  const id = useId();
  return (
    <div className={field.field} role="radiogroup" aria-labelledby={id}>
      <span className={field.label} id={id}>
        {label}
      </span>
      <div className={styles.choices}>
        {choices.map(([each, words]) => (
          <label key={each} className={styles.choice}>
            <input
              type="radio"
              name={`${id}choice`}
              value={each}
              checked={each === value}
              onChange={() => onChange(each)}
            />
            {words}
          </label>
        ))}
      </div>
    </div>
  );
}

interface CheckProps {
  readonly children: ReactNode;
  readonly checked: boolean;
  readonly onChange: (checked: boolean) => void;
  readonly className?: string | undefined;
}

/** A box to tick. */
export function Check({ children, checked, onChange, className }: CheckProps) {
  return (
    <label className={`${styles.check} ${className ?? ''}`.trim()}>
      <input type="checkbox" checked={checked} onChange={(event) => onChange(event.target.checked)} />
      <span className={styles.box} aria-hidden="true">
        {checked && (
          <svg viewBox="0 0 24 24" aria-hidden="true">
            <path d="M5 12l5 5 9-11" />
          </svg>
        )}
      </span>
      {children}
    </label>
  );
}
