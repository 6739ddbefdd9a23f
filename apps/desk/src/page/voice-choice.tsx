/** The voices of an exercise: which one is being written, one more, one less. */

import type { Exercise, Voice } from '@shedbook/core';
import { Button, Icon } from '@shedbook/stand';
import { type Unnumbered, withoutVoice, withVoice } from '../edit/exercises.ts';
import { AddVoice } from '../shared/add-voice.tsx';
import { useWords } from '../words/words.tsx';
import { BoxActions } from './box-actions.tsx';

interface VoiceChoiceProps {
  readonly exercise: Exercise;
  /** Which of its voices is being written, from 0. */
  readonly part: number;
  readonly onPart: (part: number) => void;
}

/** Which voice is being written, where there are several. */
export function VoiceChoice({ exercise, part, onPart }: VoiceChoiceProps) {
  const words = useWords();
  if (exercise.parts.length < 2) return null;
  return (
    <fieldset>
      <legend>{words.page.voice}</legend>
      {exercise.parts.map(({ voice }, index) => (
        <Button key={voice} aria-pressed={index === part} onClick={() => onPart(index)}>
          {words.voices[voice]}
        </Button>
      ))}
    </fieldset>
  );
}

interface VoicesOfExerciseProps extends VoiceChoiceProps {
  readonly onChange: (exercise: Unnumbered) => void;
}

/** One more voice in the exercise, or one less. */
export function VoicesOfExercise({ exercise, part, onPart, onChange }: VoicesOfExerciseProps) {
  const words = useWords();
  const written = exercise.parts[part];
  const add = (voice: Voice) => {
    onChange(withVoice(exercise, voice));
    onPart(exercise.parts.length);
  };
  return (
    <BoxActions>
      <AddVoice there={exercise.parts.map((each) => each.voice)} onAdd={add} />
      {written && exercise.parts.length > 1 && (
        <Button onClick={() => onChange(withoutVoice(exercise, part))}>
          <Icon name="close" />
          {words.groove.removeVoice({ voice: written.voice })}
        </Button>
      )}
    </BoxActions>
  );
}
