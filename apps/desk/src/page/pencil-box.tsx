/** What lies beside the chosen exercise: strokes, hands, subdivisions, its text, and what can be done with it. */

import { type Exercise, handsOf, type Lesson } from '@shedbook/core';
import { Button, Icon, type IconName } from '@shedbook/stand';
import { withBar, withoutBar } from '../edit/bars.ts';
import { type Unnumbered, withLine } from '../edit/exercises.ts';
import { withMedia } from '../edit/said.ts';
import { clearHands, type Line, type SlotPlace, setHand, withPattern } from '../edit/strokes.ts';
import { BarTools } from '../line/bar-tools.tsx';
import { Division, type LineToolsProps, Strokes } from '../line/stroke-tools.tsx';
import styles from '../line/tool-box.module.css';
import { ToolBox } from '../line/tool-box.tsx';
import { KeptField } from '../shared/kept-field.tsx';
import { useWords } from '../words/words.tsx';
import { BoxActions } from './box-actions.tsx';
import { MediaChoice } from './media-choice.tsx';
import { PatternField } from './pattern-field.tsx';
import { Rearrange } from './rearrange.tsx';
import { SaidTools } from './said-tools.tsx';
import type { Rearrangement } from './use-rearranging.ts';
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
  readonly rearranging: Rearrangement;
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

/** The line that is being written. */
function lineOf(exercise: Exercise, part: number): Line | null {
  const pattern = exercise.parts[part]?.pattern;
  return pattern ? { pattern, sticking: handsOf(exercise, part) } : null;
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
      <Division line={line} place={place} onLine={onLine} />
      <BarTools
        bars={written.pattern.bars.length}
        onAdd={(how) => onChange(withBar(exercise, place.bar, how))}
        onRemove={() => onChange(withoutBar(exercise, place.bar))}
      />
      {lesson.limbs[written.voice].endsWith('hand') && <Hands line={line} place={place} onLine={onLine} />}
      <PatternField
        pattern={written.pattern}
        voice={written.voice}
        meter={lesson.meter}
        onChange={(pattern) => onLine(withPattern(line, pattern))}
      />
      <VoicesOfExercise {...props} />
      <SaidTools lesson={lesson} exercise={exercise} place={place} onChange={onChange} />
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
      <MediaChoice media={exercise.media} onMedia={(media) => onChange(withMedia(exercise, media))} />
      <Rearrange exercise={exercise} part={part} rearranging={props.rearranging} />
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
  const line = lineOf(exercise, part);
  const voice = exercise.parts[part]?.voice;
  const onLine = (next: Line) => props.onChange(withLine(exercise, part, next));
  return (
    <ToolBox
      title={words.exercise({ n: exercise.number })}
      docked={docked}
      written="[data-exercise][data-chosen]"
      over={<VoiceChoice exercise={exercise} part={part} onPart={props.onPart} />}
      strokes={line && voice && <Strokes line={line} voice={voice} place={place} onLine={onLine} />}
    >
      <MoreTools {...props} />
    </ToolBox>
  );
}
