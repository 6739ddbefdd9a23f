/** One more voice: those that are not there yet, in a menu. */
import { VOICES, type Voice } from '@shedbook/core';
import { Icon } from '@shedbook/stand';
import { useWords } from '../words/words.tsx';
import { PickMenu } from './pop-over.tsx';

interface AddVoiceProps {
  /** Voices that are there already. */
  readonly there: readonly Voice[];
  readonly onAdd: (voice: Voice) => void;
}

/** The button and its menu. */
export function AddVoice({ there, onAdd }: AddVoiceProps) {
  const words = useWords();
  const missing = VOICES.filter((voice) => !there.includes(voice));
  return (
    <PickMenu<Voice>
      label={words.groove.addVoice}
      opens={
        <>
          <Icon name="plus" />
          {words.groove.addVoice}
        </>
      }
      placement="top start"
      items={missing.map((voice) => [voice, words.voices[voice]] as const)}
      onPick={onAdd}
    />
  );
}
