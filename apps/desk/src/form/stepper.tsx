/** A small whole number, one up or down at a press. */
import { Button, Icon } from '@shedbook/stand';
import { useWords } from '../words/words.tsx';
import styles from './stepper.module.css';

interface StepperProps {
  readonly label: string;
  /** A whole number. */
  readonly value: number;
  /** A whole number. */
  readonly least: number;
  /** A whole number. */
  readonly most: number;
  readonly onChange: (value: number) => void;
}

/** The number between its two buttons. */
export function Stepper({ label, value, least, most, onChange }: StepperProps) {
  const words = useWords().forms;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset has a layout of its own
    <div className={styles.stepper} role="group" aria-label={label}>
      <span className={styles.label} aria-hidden="true">
        {label}
      </span>
      <div className={styles.number}>
        <Button
          aria-label={words.fewer({ what: label })}
          disabled={value <= least}
          onClick={() => onChange(value - 1)}
        >
          <Icon name="minus" />
        </Button>
        <output>{value}</output>
        <Button
          aria-label={words.more({ what: label })}
          disabled={value >= most}
          onClick={() => onChange(value + 1)}
        >
          <Icon name="plus" />
        </Button>
      </div>
    </div>
  );
}
