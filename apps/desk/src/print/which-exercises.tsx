/** Which exercises something is made of: all of them, or some by their numbers. */
import { exerciseLabel, type Lesson } from '@shedbook/core';
import { Check, Choices } from '@shedbook/stand';
import { useState } from 'react';
import { useWords } from '../words/words.tsx';
import styles from './recordings.module.css';

interface WhichProps {
  readonly lesson: Lesson;
  /** Numbers of the exercises. */
  readonly chosen: readonly number[];
  readonly onChange: (numbers: readonly number[]) => void;
}

/** The choice. */
export function WhichExercises({ lesson, chosen, onChange }: WhichProps) {
  const words = useWords();
  const [isAll, setAll] = useState(true);
  const all = lesson.exercises.map(({ number }) => number);
  return (
    <>
      <Choices<'all' | 'some'>
        label={words.recordings.which}
        value={isAll ? 'all' : 'some'}
        choices={[
          ['all', words.recordings.all({ n: all.length })],
          ['some', words.recordings.some],
        ]}
        onChange={(which) => {
          setAll(which === 'all');
          onChange(which === 'all' ? all : all.slice(0, 1));
        }}
      />
      {!isAll && (
        // biome-ignore lint/a11y/useSemanticElements: a fieldset has a layout of its own
        <div className={styles.numbers} role="group" aria-label={words.recordings.which}>
          {all.map((number) => (
            <Check
              key={number}
              checked={chosen.includes(number)}
              onChange={(on) => onChange(all.filter((n) => (n === number ? on : chosen.includes(n))))}
            >
              <span className="hidden-words">{words.page.exercise({ n: number })}</span>
              <span aria-hidden="true">{exerciseLabel(number)}</span>
            </Check>
          ))}
        </div>
      )}
    </>
  );
}
