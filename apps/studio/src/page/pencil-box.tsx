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
} from '@shedbook/core';
import { useState } from 'react';
import { Button } from 'react-aria-components';
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
import { Icon, type IconName } from '../shared/icons.tsx';
import { KeptField } from '../shared/kept-field.tsx';
import { useWords } from '../words/words.tsx';
import { markWords } from './mark-words.ts';
import { PatternField } from './pattern-field.tsx';

/** What can be done with an exercise as a whole. */
export type ExerciseAction = 'add' | 'duplicate' | 'up' | 'down' | 'remove';

interface PencilBoxProps {
  readonly lesson: Lesson;
  readonly exercise: Exercise;
  readonly place: SlotPlace;
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
function buttonMarks(lesson: Lesson, exercise: Exercise): readonly Mark[] {
  const voice = exercise.parts[0]?.voice ?? lesson.comping;
  return marksFor(voice, MARKS).filter((mark) => mark === 'X' || !isAccent(mark));
}

function Strokes({
  lesson,
  exercise,
  place,
  onLine,
}: Omit<PencilBoxProps, 'onChange' | 'onAction' | 'docked'> & { readonly onLine: (line: Line) => void }) {
  const words = useWords();
  const part = exercise.parts[0];
  if (!part) return null;
  const line: Line = { pattern: part.pattern, sticking: exercise.sticking };
  const current = markAt(part.pattern, place);
  return (
    <fieldset>
      <legend>{words.page.strokes}</legend>
      {buttonMarks(lesson, exercise).map((mark) => (
        <Button
          key={mark}
          className="button mark"
          aria-pressed={mark === current}
          onPress={() => onLine(setMark(line, place, mark))}
        >
          {markWords(words.marks, part.voice, mark)}
        </Button>
      ))}
    </fieldset>
  );
}

function HandsAndSlots({
  exercise,
  place,
  onLine,
}: {
  readonly exercise: Exercise;
  readonly place: SlotPlace;
  readonly onLine: (line: Line) => void;
}) {
  const words = useWords().page;
  const part = exercise.parts[0];
  if (!part) return null;
  const line: Line = { pattern: part.pattern, sticking: exercise.sticking };
  const slots = part.pattern.bars[place.bar]?.[place.beat]?.marks.length;
  return (
    <>
      <fieldset>
        <legend>{words.divide}</legend>
        {SUBDIVISIONS.map((n) => (
          <Button
            key={n}
            className="button digit"
            aria-label={words.divideInto(n)}
            aria-pressed={n === slots}
            onPress={() => onLine(divideBeat(line, place, n as Subdivision))}
          >
            {n}
          </Button>
        ))}
      </fieldset>
      <fieldset>
        <legend>{words.hands}</legend>
        {(['R', 'L', 'B'] as const).map((hand) => (
          <Button
            key={hand}
            className="button digit"
            aria-label={{ R: words.right, L: words.left, B: words.both }[hand]}
            onPress={() => onLine(setHand(line, place, hand))}
          >
            {hand}
          </Button>
        ))}
        <Button className="button" isDisabled={!exercise.sticking} onPress={() => onLine(clearHands(line))}>
          {words.noHands}
        </Button>
      </fieldset>
    </>
  );
}

/** Everything but the strokes. */
function MoreTools({ lesson, exercise, place, onChange, onAction }: Omit<PencilBoxProps, 'docked'>) {
  const words = useWords().page;
  const part = exercise.parts[0];
  if (!part) return null;
  const onLine = (line: Line) => onChange(withLine(exercise, 0, line));
  const labels: Readonly<Record<ExerciseAction, string>> = {
    add: words.addAfter,
    duplicate: words.duplicate,
    up: words.up,
    down: words.down,
    remove: words.remove,
  };
  return (
    <>
      <HandsAndSlots exercise={exercise} place={place} onLine={onLine} />
      <PatternField
        pattern={part.pattern}
        voice={part.voice}
        meter={lesson.meter}
        onChange={(pattern) => onLine({ pattern, sticking: null })}
      />
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
      <div className="box-actions">
        {ACTIONS.map(([action, icon]) => (
          <Button key={action} className="button" onPress={() => onAction(action)}>
            <Icon name={icon} />
            {labels[action]}
          </Button>
        ))}
      </div>
    </>
  );
}

/** The box. */
export function PencilBox(props: PencilBoxProps) {
  const { lesson, exercise, place, docked = false } = props;
  const words = useWords().page;
  const [open, setOpen] = useState(false);
  const onLine = (line: Line) => props.onChange(withLine(exercise, 0, line));
  return (
    <section
      className="pencil-box"
      data-docked={docked || undefined}
      data-open={!docked || open || undefined}
      aria-label={words.exercise(exercise.number)}
    >
      <h2>{words.exercise(exercise.number)}</h2>
      <div className="pencil-row">
        <Strokes lesson={lesson} exercise={exercise} place={place} onLine={onLine} />
        {docked && (
          <Button
            className="button"
            aria-expanded={open}
            aria-label={open ? words.fewerTools : words.moreTools}
            onPress={() => setOpen(!open)}
          >
            <Icon name={open ? 'close' : 'more'} />
          </Button>
        )}
      </div>
      {(!docked || open) && <MoreTools {...props} />}
    </section>
  );
}
