/** Words that are pinned to single bars of a take. */
import type { BarMark } from '@shedbook/routes';
import { Button, Field, Icon, Select } from '@shedbook/stand';
import { type FormEvent, useState } from 'react';
import { useWords } from '../words/students-words.tsx';
import styles from './sent-takes-list.module.css';

interface BarChoiceProps {
  readonly label: string;
  /** How many bars there are. */
  readonly bars: number;
  /** From 1; null: all of them. */
  readonly bar: number | null;
  /** What all of them are called, where they can be chosen. */
  readonly all?: string;
  readonly onChange: (bar: number | null) => void;
}

/** Which bar of an exercise. */
export function BarChoice({ label, bars, bar, all, onChange }: BarChoiceProps) {
  return (
    <Select label={label} value={bar ?? ''} onChange={({ target }) => onChange(Number(target.value) || null)}>
      {all !== undefined && <option value="">{all}</option>}
      {Array.from({ length: bars }, (_, index) => (
        <option key={index} value={index + 1}>
          {index + 1}
        </option>
      ))}
    </Select>
  );
}

interface BarMarksProps {
  readonly marks: readonly BarMark[];
  /** How many bars the exercise has. */
  readonly bars: number;
  readonly onChange: (marks: readonly BarMark[]) => void;
}

/** The marks, and another one. */
export function BarMarks({ marks, bars, onChange }: BarMarksProps) {
  const words = useWords().answer;
  const [bar, setBar] = useState(1);
  const [text, setText] = useState('');
  const add = (event: FormEvent) => {
    event.preventDefault();
    const said = text.trim();
    if (said === '') return;
    onChange([...marks, { bar, text: said }].toSorted((a, b) => a.bar - b.bar));
    setText('');
  };
  return (
    <div data-part="bar-marks">
      {marks.length > 0 && (
        <ul className={styles.marks}>
          {marks.map((mark, index) => (
            <li key={`${mark.bar} ${mark.text}`}>
              {words.mark(mark)}{' '}
              <Button
                dress="bare"
                aria-label={words.takeOutMark(mark)}
                onClick={() => onChange(marks.filter((_, each) => each !== index))}
              >
                <Icon name="close" />
              </Button>
            </li>
          ))}
        </ul>
      )}
      <form className={styles.pin} onSubmit={add}>
        <BarChoice label={words.bar} bars={bars} bar={bar} onChange={(next) => setBar(next ?? 1)} />
        <Field
          label={words.onBar}
          value={text}
          maxLength={500}
          onChange={({ target }) => setText(target.value)}
        />
        <Button type="submit">{words.pin}</Button>
      </form>
    </div>
  );
}
