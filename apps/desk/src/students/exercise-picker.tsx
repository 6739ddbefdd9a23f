/** Choosing an exercise of a lesson on the desk. */
import type { Exercise } from '@shedbook/core';
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { useWords } from '../words/words.tsx';
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
    <div className="exercise-picker">
      <label className="field">
        <span>{words.lesson}</span>
        <select value={chosen?.id ?? ''} onChange={(event) => setId(event.target.value)}>
          {shelf.map((each) => (
            <option key={each.id} value={each.id}>
              {each.lesson.title}
            </option>
          ))}
        </select>
      </label>
      <label className="field">
        <span>{words.exercise}</span>
        <select value={exercise?.number ?? ''} onChange={(event) => setNumber(Number(event.target.value))}>
          {exercises.map((each) => (
            <option key={each.number} value={each.number}>
              {each.name === null ? each.number : `${each.number} ${each.name}`}
            </option>
          ))}
        </select>
      </label>
      <Button
        className="button"
        isDisabled={!exercise}
        onPress={() => chosen && exercise && onPick(chosen, exercise)}
      >
        {action}
      </Button>
    </div>
  );
}
