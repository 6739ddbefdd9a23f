/** The voices of an exercise: which one is being written, one more, one less. */
import { type Exercise, VOICES, type Voice } from '@shedbook/core';
import { Icon } from '@shedbook/stand';
import { Button, Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components';
import { type Unnumbered, withoutVoice, withVoice } from '../edit/exercises.ts';
import { useWords } from '../words/words.tsx';

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
    <fieldset className="voice-choice">
      <legend>{words.page.voice}</legend>
      {exercise.parts.map(({ voice }, index) => (
        <Button key={voice} className="button" aria-pressed={index === part} onPress={() => onPart(index)}>
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
  const there = new Set(exercise.parts.map((each) => each.voice));
  const written = exercise.parts[part];
  const add = (voice: Voice) => {
    onChange(withVoice(exercise, voice));
    onPart(exercise.parts.length);
  };
  return (
    <div className="box-actions">
      <MenuTrigger>
        <Button className="button">
          <Icon name="plus" />
          {words.groove.addVoice}
        </Button>
        <Popover className="popover" placement="top start">
          <Menu className="menu" aria-label={words.groove.addVoice} onAction={(key) => add(key as Voice)}>
            {VOICES.filter((voice) => !there.has(voice)).map((voice) => (
              <MenuItem key={voice} id={voice} className="menu-item">
                {words.voices[voice]}
              </MenuItem>
            ))}
          </Menu>
        </Popover>
      </MenuTrigger>
      {written && exercise.parts.length > 1 && (
        <Button className="button" onPress={() => onChange(withoutVoice(exercise, part))}>
          <Icon name="close" />
          {words.groove.removeVoice(words.voices[written.voice])}
        </Button>
      )}
    </div>
  );
}
