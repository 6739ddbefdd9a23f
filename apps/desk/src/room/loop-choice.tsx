/** After how many times through the next exercise comes by itself. */
import { Select } from '@shedbook/stand';
import { useWords } from '../words/words.tsx';
import styles from './loop-choice.module.css';

interface LoopChoiceProps {
  readonly loops: number;
  readonly onChange: (loops: number) => void;
}

const CHOICES = [0, 1, 2, 4, 8] as const;

/** The choice; 0 is never. */
export function LoopChoice({ loops, onChange }: LoopChoiceProps) {
  const words = useWords().room;
  return (
    <Select
      className={styles.loopChoice}
      label={words.nextAfter}
      value={loops}
      onChange={(event) => onChange(Number(event.target.value))}
    >
      {CHOICES.map((each) => (
        <option key={each} value={each}>
          {words.loops({ n: each })}
        </option>
      ))}
    </Select>
  );
}
