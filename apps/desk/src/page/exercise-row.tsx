/** An exercise on the page: its number in the margin, its notation, and where it is chosen the place to write. */

import { type Exercise, exerciseLabel, handsOf, type Meter, type Pattern } from '@shedbook/core';
import { ExampleSign } from '@shedbook/stand';
import { sayExercise } from '@shedbook/words';
import { type KeyboardEvent, memo, type PointerEvent } from 'react';
import { type Unnumbered, withLine } from '../edit/exercises.ts';
import { withMedia } from '../edit/said.ts';
import type { Line, SlotPlace } from '../edit/strokes.ts';
import { LineEditor } from '../line/line-editor.tsx';
import { ExerciseRows, notateExercise, staffOf } from '../notation/exercise-drawing.tsx';
import { beatEdges } from '../notation/layout.ts';
import { PressOver } from '../notation/press-over.tsx';
import { ShownMedia } from '../shared/shown-media.tsx';
import { useWords } from '../words/words.tsx';
import styles from './exercise-row.module.css';
import { useAddMedia } from './use-add-media.ts';

/** Keys that are held while something is pressed. */
export interface Held {
  readonly shift: boolean;
  readonly command: boolean;
}

/** What an exercise row is given. */
export interface ExerciseRowProps {
  readonly exercise: Exercise;
  readonly meter: Meter;
  readonly chosen: boolean;
  /** Whether it is selected beside the chosen one. */
  readonly selected: boolean;
  readonly playing: boolean;
  readonly active: SlotPlace | null;
  /** How many of its bars stand beside each other. */
  readonly abreast: number;
  /** Which of its voices is being written, from 0. */
  readonly part: number;
  readonly takesFocus: boolean;
  /** Told what was pressed, and with which keys held. */
  readonly onChoose: (number: number, place: SlotPlace, held: Held) => void;
  readonly onActive: (place: SlotPlace) => void;
  readonly onChange: (number: number, exercise: Unnumbered) => void;
  readonly onKey: (event: KeyboardEvent) => void;
  readonly onGrab: (event: PointerEvent<HTMLElement>) => void;
}

/** Where somebody pressed, as shares of the drawing's width and height, from 0 to 1. */
interface Pressed {
  readonly across: number;
  readonly down: number;
}

function within(share: number): number {
  return Math.min(0.999, Math.max(0, share));
}

/** The slot nearest to where somebody pressed, in rows of so many bars. */
function slotAt(pattern: Pattern, meter: Meter, abreast: number, { across, down }: Pressed): SlotPlace {
  const edges = beatEdges(meter);
  const end = edges.at(-1) ?? 1;
  const rows = Math.ceil(pattern.bars.length / abreast);
  const x = within(across) * abreast + Math.floor(within(down) * rows) * abreast;
  const bar = Math.min(pattern.bars.length - 1, Math.floor(x));
  const units = (x - bar) * end;
  const beat = Math.max(
    0,
    edges.findIndex((edge, i) => units >= edge && units < (edges[i + 1] ?? end)),
  );
  const from = edges[beat] ?? 0;
  const slots = pattern.bars[bar]?.[beat]?.marks.length ?? 1;
  const phase = (units - from) / ((edges[beat + 1] ?? end) - from);
  return { bar, beat, slot: Math.min(slots - 1, Math.floor(phase * slots)) };
}

function ChosenLine(props: ExerciseRowProps) {
  const { exercise } = props;
  const words = useWords();
  const part = exercise.parts[props.part] ?? exercise.parts[0];
  if (!part) return null;
  const line: Line = { pattern: part.pattern, sticking: handsOf(exercise, exercise.parts.indexOf(part)) };
  const voice = exercise.parts.length > 1 ? `${words.voices[part.voice]}, ` : '';
  return (
    <LineEditor
      label={`${voice}${words.page.exercise({ n: exercise.number })}: ${sayExercise(exercise, words)}`}
      line={line}
      voice={part.voice}
      meter={props.meter}
      notated={notateExercise(exercise, props.meter)}
      staff={staffOf(exercise)}
      active={props.active}
      takesFocus={props.takesFocus}
      onActive={props.onActive}
      onChange={(next) => props.onChange(exercise.number, withLine(exercise, props.part, next))}
      loops={part.pattern.bars.length > 1 ? exercise.number : undefined}
      onOtherKey={props.onKey}
    />
  );
}

function RestingLine(props: ExerciseRowProps) {
  const { exercise, meter } = props;
  const words = useWords();
  const pattern = exercise.parts[0]?.pattern;
  return (
    <PressOver
      className={styles.line}
      isLong={(pattern?.bars.length ?? 1) > 1}
      label={`${words.page.exercise({ n: exercise.number })}${props.selected ? `, ${words.rearrange.isSelected}` : ''}: ${sayExercise(exercise, words)}`}
      onPress={(event) => {
        const box = event.currentTarget.getBoundingClientRect();
        const byKey = event.clientX === 0;
        const across = byKey ? 0 : (event.clientX - box.left) / box.width;
        const down = byKey ? 0 : (event.clientY - box.top) / box.height;
        const place = pattern && slotAt(pattern, meter, props.abreast, { across, down });
        const held = { shift: event.shiftKey, command: event.ctrlKey || event.metaKey };
        if (place) props.onChoose(exercise.number, place, held);
      }}
    >
      <ExerciseRows exercise={exercise} meter={meter} abreast={props.abreast} />
    </PressOver>
  );
}

function keyOf(exercise: Exercise): string {
  const { parts, ...said } = exercise;
  const patterns = parts.map((part) => [
    part.voice,
    part.hands,
    part.pattern.bars.map((bar) => bar.map((each) => each.text)),
  ]);
  return JSON.stringify([said, patterns]);
}

function isUnchanged(before: ExerciseRowProps, after: ExerciseRowProps): boolean {
  if (before.chosen || after.chosen || before.playing !== after.playing) return false;
  if (before.abreast !== after.abreast || before.selected !== after.selected) return false;
  if (before.meter.text !== after.meter.text) return false;
  return before.exercise === after.exercise || keyOf(before.exercise) === keyOf(after.exercise);
}

/** One exercise. An exercise that is neither chosen nor changed is not drawn again. */
export const ExerciseRow = memo(function ExerciseRow(props: ExerciseRowProps) {
  const { exercise } = props;
  const words = useWords().page;
  const { drop } = useAddMedia(exercise.media, (media) =>
    props.onChange(exercise.number, withMedia(exercise, media)),
  );
  return (
    <div
      className={styles.exercise}
      {...drop}
      data-exercise={exercise.number}
      data-chosen={props.chosen || undefined}
      data-selected={props.selected || undefined}
      data-playing={props.playing || undefined}
    >
      <span
        className={styles.number}
        data-part="number"
        data-long={exerciseLabel(exercise.number).length > 2 || undefined}
        title={words.drag({ n: exercise.number })}
        onPointerDown={(event) => props.onGrab(event)}
      >
        {exerciseLabel(exercise.number)}
        {exercise.example && <ExampleSign says={words.example} />}
      </span>
      <div>
        {exercise.name && <p className={styles.name}>{exercise.name}</p>}
        {props.chosen ? (
          <div className={styles.line}>
            <ChosenLine {...props} />
          </div>
        ) : (
          <RestingLine {...props} />
        )}
        {exercise.notes && <p className={styles.notes}>{exercise.notes}</p>}
        <ShownMedia media={exercise.media} />
      </div>
    </div>
  );
}, isUnchanged);
