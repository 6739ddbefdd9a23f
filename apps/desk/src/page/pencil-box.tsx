/** What lies beside the chosen exercise: strokes, hands, subdivisions, its text, and what can be done with it. */

import {
  type Exercise,
  isAccent,
  type Lesson,
  MARKS,
  type Mark,
  marksFor,
  SUBDIVISIONS,
  type Subdivision,
  type Voice,
} from '@shedbook/core';
import { Button, Icon, type IconName } from '@shedbook/stand';
import { markWords } from '@shedbook/words';
import { useState } from 'react';
import { type Unnumbered, withLine } from '../edit/exercises.ts';
import {
  clearHands,
  divideBeat,
  type Line,
  markAt,
  type SlotPlace,
  setHand,
  setMark,
} from '../edit/strokes.ts';
import { KeptField } from '../shared/kept-field.tsx';
import { useWords } from '../words/words.tsx';
import { BoxActions } from './box-actions.tsx';
import { PatternField } from './pattern-field.tsx';
import styles from './pencil-box.module.css';
import { VoiceChoice, VoicesOfExercise } from './voice-choice.tsx';

/** What can be done with an exercise as a whole. */
export type ExerciseAction = 'add' | 'duplicate' | 'up' | 'down' | 'remove';

interface PencilBoxProps {
  readonly lesson: Lesson;
  readonly exercise: Exercise;
  /** Which of its voices is being written, from 0. */
  readonly part: number;
  readonly place: SlotPlace;
  readonly onPart: (part: number) => void;
  readonly onChange: (exercise: Unnumbered) => void;
  readonly onAction: (action: ExerciseAction) => void;
  /** Whether it lies along the lower edge, with strokes in reach and the rest to be opened. */
  readonly docked?: boolean;
}

const ACTIONS: readonly (readonly [ExerciseAction, IconName])[] = [
  ['add', 'plus'],
  ['duplicate', 'copy'],
  ['up', 'up'],
  ['down', 'down'],
  ['remove', 'bin'],
];

/** Marks that have a button: every plain one, and the accent. */
function buttonMarks(voice: Voice): readonly Mark[] {
  return marksFor(voice, MARKS).filter((mark) => mark === 'X' || !isAccent(mark));
}

/** The line that is being written; hands belong to the first voice. */
function lineOf(exercise: Exercise, part: number): Line | null {
  const pattern = exercise.parts[part]?.pattern;
  return pattern ? { pattern, sticking: part === 0 ? exercise.sticking : null } : null;
}

interface LineToolsProps {
  readonly line: Line;
  readonly place: SlotPlace;
  readonly onLine: (line: Line) => void;
}

function Strokes({ line, place, onLine, voice }: LineToolsProps & { readonly voice: Voice }) {
  const words = useWords();
  const current = markAt(line.pattern, place);
  return (
    <fieldset>
      <legend>{words.page.strokes}</legend>
      {buttonMarks(voice).map((mark) => (
        <Button
          key={mark}
          className={styles.mark}
          aria-pressed={mark === current}
          onClick={() => onLine(setMark(line, place, mark))}
        >
          {markWords(words.marks, voice, mark)}
        </Button>
      ))}
    </fieldset>
  );
}

function Slots({ line, place, onLine }: LineToolsProps) {
  const words = useWords().page;
  const slots = line.pattern.bars[place.bar]?.[place.beat]?.marks.length;
  return (
    <fieldset>
      <legend>{words.divide}</legend>
      {SUBDIVISIONS.map((n) => (
        <Button
          key={n}
          className={styles.digit}
          aria-label={words.divideInto({ n })}
          aria-pressed={n === slots}
          onClick={() => onLine(divideBeat(line, place, n as Subdivision))}
        >
          {n}
        </Button>
      ))}
    </fieldset>
  );
}

function Hands({ line, place, onLine }: LineToolsProps) {
  const words = useWords().page;
  return (
    <fieldset>
      <legend>{words.hands}</legend>
      {(['R', 'L', 'B'] as const).map((hand) => (
        <Button
          key={hand}
          className={styles.digit}
          aria-label={{ R: words.right, L: words.left, B: words.both }[hand]}
          onClick={() => onLine(setHand(line, place, hand))}
        >
          {hand}
        </Button>
      ))}
      <Button disabled={!line.sticking} onClick={() => onLine(clearHands(line))}>
        {words.noHands}
      </Button>
    </fieldset>
  );
}

/** Everything but the strokes. */
function MoreTools(props: Omit<PencilBoxProps, 'docked'>) {
  const { lesson, exercise, part, place, onChange, onAction } = props;
  const words = useWords().page;
  const line = lineOf(exercise, part);
  const written = exercise.parts[part];
  if (!line || !written) return null;
  const onLine = (next: Line) => onChange(withLine(exercise, part, next));
  const labels: Readonly<Record<ExerciseAction, string>> = {
    add: words.addAfter,
    duplicate: words.duplicate,
    up: words.up,
    down: words.down,
    remove: words.remove,
  };
  return (
    <>
      <Slots line={line} place={place} onLine={onLine} />
      {part === 0 && <Hands line={line} place={place} onLine={onLine} />}
      <PatternField
        pattern={written.pattern}
        voice={written.voice}
        meter={lesson.meter}
        onChange={(pattern) => onLine({ pattern, sticking: null })}
      />
      <VoicesOfExercise {...props} />
      <KeptField
        label={words.name}
        value={exercise.name ?? ''}
        onKeep={(name) => onChange({ ...exercise, name: name || null })}
      />
      <KeptField
        label={words.notes}
        value={exercise.notes ?? ''}
        isLong
        onKeep={(notes) => onChange({ ...exercise, notes: notes || null })}
      />
      <BoxActions>
        {ACTIONS.map(([action, icon]) => (
          <Button key={action} onClick={() => onAction(action)}>
            <Icon name={icon} />
            {labels[action]}
          </Button>
        ))}
      </BoxActions>
    </>
  );
}

/** The box. */
export function PencilBox(props: PencilBoxProps) {
  const { exercise, part, place, docked = false } = props;
  const words = useWords().page;
  const [open, setOpen] = useState(false);
  const line = lineOf(exercise, part);
  const voice = exercise.parts[part]?.voice;
  const onLine = (next: Line) => props.onChange(withLine(exercise, part, next));
  return (
    <section
      className={styles.box}
      data-part="pencil-box"
      data-docked={docked || undefined}
      data-open={!docked || open || undefined}
      aria-label={words.exercise({ n: exercise.number })}
    >
      <h2>{words.exercise({ n: exercise.number })}</h2>
      <VoiceChoice exercise={exercise} part={part} onPart={props.onPart} />
      <div className={styles.row}>
        {line && voice && <Strokes line={line} voice={voice} place={place} onLine={onLine} />}
        {docked && (
          <Button
            aria-expanded={open}
            aria-label={open ? words.fewerTools : words.moreTools}
            onClick={() => {
              setOpen(!open);
              if (!open) document.querySelector('[data-exercise][data-chosen]')?.scrollIntoView();
            }}
          >
            <Icon name={open ? 'close' : 'more'} />
          </Button>
        )}
      </div>
      {(!docked || open) && <MoreTools {...props} />}
    </section>
  );
}
