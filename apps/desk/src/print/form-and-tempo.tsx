/** In which form and how fast the exercises of a file are played. */
import {
  bringWithin,
  countedTempo,
  type Lesson,
  PLAYED_TEMPI,
  quarterTempo,
  sectionOf,
} from '@shedbook/core';
import { Field, Select } from '@shedbook/stand';
import { nameIn } from '@shedbook/words';
import { useWords } from '../words/words.tsx';

interface FormProps {
  readonly lesson: Lesson;
  /** Null for the form that plays where none is named. */
  readonly form: string | null;
  readonly onChange: (form: string | null) => void;
}

/** The form. */
export function FormChoice({ lesson, form, onChange }: FormProps) {
  const words = useWords();
  return (
    <Select
      label={words.sound.form}
      value={form ?? ''}
      onChange={({ target }) => onChange(target.value || null)}
    >
      <option value="">{words.recordings.usualForm}</option>
      {lesson.forms.map(({ name }) => (
        <option key={name} value={name}>
          {nameIn(words.sound.forms, name)}
        </option>
      ))}
    </Select>
  );
}

interface TempoProps {
  readonly lesson: Lesson;
  /** The exercise whose section says how a tempo is counted. */
  readonly exercise: number | null;
  /** Quarter notes a minute; null for the start tempo. */
  readonly onChange: (bpm: number | null) => void;
}

/** The tempo. */
export function TempoChoice({ lesson, exercise, onChange }: TempoProps) {
  const words = useWords();
  const { meter, tempo } = sectionOf(lesson, exercise);
  return (
    <Field
      label={words.sound.tempo}
      type="number"
      inputMode="numeric"
      placeholder={words.recordings.startTempo({ bpm: countedTempo(meter, tempo.startBpm) })}
      onChange={({ target }) => {
        const bpm = quarterTempo(meter, target.valueAsNumber);
        onChange(Number.isFinite(bpm) ? bringWithin(PLAYED_TEMPI, bpm) : null);
      }}
    />
  );
}
