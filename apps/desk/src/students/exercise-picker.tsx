/** Choosing an exercise of a lesson on the desk. */

import { type Exercise, exerciseLabel } from '@shedbook/core';
import { Button, Select } from '@shedbook/stand';
import { useState } from 'react';
import { useWords } from '../words/students-words.tsx';
import styles from './exercise-picker.module.css';
import type { DeskShelf } from './take-in.ts';

interface ExercisePickerProps {
  readonly shelf: readonly DeskShelf[];
  /** What the button says. */
  readonly action: string;
  readonly onPick: (shelf: DeskShelf, exercise: Exercise) => void;
}

/** The choice. */
export function ExercisePicker({ shelf, action, onPick }: ExercisePickerProps) {
  const words = useWords().students;
  const [id, setId] = useState('');
  const [number, setNumber] = useState(1);
  const chosen = shelf.find((each) => each.id === id) ?? shelf[0];
  const exercises = chosen?.lesson.exercises ?? [];
  const exercise = exercises.find((each) => each.number === number) ?? exercises[0];
  return (
    <div className={styles.picker}>
      <Select label={words.lesson} value={chosen?.id ?? ''} onChange={(event) => setId(event.target.value)}>
        {shelf.map((each) => (
          <option key={each.id} value={each.id}>
            {each.lesson.title}
          </option>
        ))}
      </Select>
      <Select
        label={words.exercise}
        value={exercise?.number ?? ''}
        onChange={(event) => setNumber(Number(event.target.value))}
      >
        {exercises.map((each) => (
          <option key={each.number} value={each.number}>
            {`${exerciseLabel(each.number)} ${each.name ?? ''}`.trim()}
          </option>
        ))}
      </Select>
      <Button disabled={!exercise} onClick={() => chosen && exercise && onPick(chosen, exercise)}>
        {action}
      </Button>
    </div>
  );
}
