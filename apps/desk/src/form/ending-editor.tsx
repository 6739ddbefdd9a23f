/** What a section ends on: the beat, the places in it and the voices that strike there, all by tapping. */
import {
  type Ending,
  isStruck,
  type Lesson,
  SUBDIVISIONS,
  strikeOf,
  VOICES,
  type Voice,
} from '@shedbook/core';
import { Button, Choices } from '@shedbook/stand';
import { countOf } from '@shedbook/words';
import { withSlot, withSlots, withVoiceStruck } from '../edit/forms.ts';
import { useWords } from '../words/words.tsx';
import styles from './ending-editor.module.css';

interface EndingEditorProps {
  readonly lesson: Lesson;
  readonly ending: Ending | null;
  readonly onAdd: () => void;
  /** Null: it ends on nothing. */
  readonly onChange: (ending: Ending | null) => void;
}

/** Voices that can be struck with an accent, those of the ending first seen. */
function voicesFor(): readonly Voice[] {
  return VOICES.filter((voice) => strikeOf(voice, 'X') !== null);
}

/** The editor of an ending, or a button that adds one. */
export function EndingEditor({ lesson, ending, onAdd, onChange }: EndingEditorProps) {
  const all = useWords();
  const words = all.forms;
  if (!ending) {
    return (
      <Button dress="bare" className={styles.add} onClick={onAdd}>
        {words.addEnding}
      </Button>
    );
  }
  const slots = ending.cell.marks.length;
  return (
    <fieldset className={styles.ending}>
      <legend>{words.ending}</legend>
      <div className={styles.lines}>
        <Choices
          label={words.onBeat}
          value={String(ending.beat)}
          choices={lesson.meter.beats.map((_, index) => [String(index + 1), String(index + 1)] as const)}
          onChange={(beat) => onChange({ ...ending, beat: Number(beat) })}
        />
        <Choices
          label={all.compose.division}
          value={String(slots)}
          choices={SUBDIVISIONS.map((each) => [String(each), String(each)] as const)}
          onChange={(next) => onChange(withSlots(ending, Number(next)))}
        />
        <div className={styles.taps}>
          <span>{all.compose.places}</span>
          <div>
            {ending.cell.marks.map((mark, slot) => (
              <Button
                key={slot}
                aria-pressed={isStruck(mark)}
                onClick={() => onChange(withSlot(ending, slot))}
              >
                {countOf(all.counts, ending.beat - 1, slot, slots)}
              </Button>
            ))}
          </div>
        </div>
        <div className={styles.taps}>
          <span>{words.voices}</span>
          <div>
            {voicesFor().map((voice) => (
              <Button
                key={voice}
                aria-pressed={ending.voices.includes(voice)}
                onClick={() => onChange(withVoiceStruck(ending, voice))}
              >
                {all.voices[voice]}
              </Button>
            ))}
          </div>
        </div>
      </div>
      <Button dress="bare" className={styles.add} onClick={() => onChange(null)}>
        {words.noEnding}
      </Button>
    </fieldset>
  );
}
