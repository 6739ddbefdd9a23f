/**
 * Which cells lie in each bar of a form: groove, exercise and ending, before they become strokes.
 *
 * Conventions: bars and beats count from 0. The groove's patterns repeat from the first bar of the form; the
 * exercise's pattern starts anew with every section that plays it, its repeats gone through as they are printed; under
 * repeats the groove is the one that is printed there. An exercise replaces the groove for the
 * voices that it names. A fixed ending replaces what the pattern and the comping voice have on its beat.
 */

import type { Voice } from '../kit/voice.ts';
import { handsOf } from '../lesson/hands.ts';
import type { Ending, Exercise, ExercisePart, Form, FormSection, Lesson } from '../lesson/lesson.ts';
import { playedBars } from '../lesson/repeats.ts';
import { type Cell, struckSlots } from '../rhythm/cell.ts';
import { add, fraction, multiply } from '../rhythm/fraction.ts';
import { beatLength, beatStarts } from '../rhythm/meter.ts';
import { type Pattern, strokesOfBar } from '../rhythm/pattern.ts';
import { loudnessOf } from './loudness.ts';
import { isSilenced } from './silence.ts';
import type { Sticking, StrokeRole } from './stroke.ts';

/** A bar of the form before it is given strokes. Bars count from 0. */
export interface PlannedBar {
  readonly bar: number;
  readonly play: FormSection['play'];
  readonly patternBar: number | null;
  readonly ending: FormSection['ending'];
  readonly click?: FormSection['click'];
}

/** One cell to be played. */
export interface PlacedCell {
  readonly voice: Voice;
  readonly role: StrokeRole;
  readonly beat: number;
  readonly cell: Cell;
  readonly sticking: readonly Sticking[] | null;
  /** What the dynamics of the exercise add at each slot, in dB; left out where none are written. */
  readonly addedDb?: readonly number[];
}

/**
 * The exercise with a number.
 * @throws RangeError when the lesson has none: check a person's input first.
 */
export function exerciseOf(lesson: Lesson, number: number): Exercise {
  const exercise = lesson.exercises.find((each) => each.number === number);
  if (!exercise) throw new RangeError(`Internal error: there is no exercise ${number}`);
  return exercise;
}

/** Bars of the loop that every lesson has. */
const LOOP_BARS = 4;

/**
 * Whether a pattern of so many bars is played again and again, and is written with a repeat sign: one that goes round
 * at least twice in the loop that every lesson has.
 */
export function isLooped(bars: number): boolean {
  return Math.round(LOOP_BARS / bars) > 1;
}

/** How many bars the exercise's pattern is written with. */
export function barsOf(exercise: Exercise): number {
  return exercise.parts[0]?.pattern.bars.length ?? 1;
}

/** The bars of the exercise's pattern (from 0) in the order in which they are played, once through. */
export function orderOf(exercise: Exercise): readonly number[] {
  return playedBars(barsOf(exercise), exercise);
}

/**
 * How many bars a section lasts: where it plays the pattern, or leaves it to the student, the whole repetitions that
 * are nearest to what the form says, one at least, so that a pattern of three bars goes round in three.
 */
function barsOfSection({ play, bars }: FormSection, patternBars: number): number {
  if (play === 'time') return bars;
  return Math.max(1, Math.round(bars / patternBars)) * patternBars;
}

/**
 * The bars of a form, its sections gone through as often as it repeats.
 * @param order bars of the pattern (from 0) in the order in which they are played
 */
export function planBars(form: Form, order: readonly number[]): readonly PlannedBar[] {
  const planned: PlannedBar[] = [];
  for (let round = 0; round < form.repeat; round += 1) {
    for (const section of form.sections) {
      const bars = barsOfSection(section, order.length);
      for (let index = 0; index < bars; index += 1) {
        planned.push({
          bar: planned.length,
          play: section.play,
          patternBar: section.play === 'pattern' ? (order[index % order.length] as number) : null,
          ending: index === bars - 1 ? section.ending : null,
          ...(section.click ? { click: section.click } : {}),
        });
      }
    }
  }
  return planned;
}

function barOf(pattern: Pattern, bar: number): readonly Cell[] {
  return pattern.bars[bar % pattern.bars.length] ?? [];
}

/** Hands of a written sticking that fall on each beat of a bar. */
function stickingByBeat(
  exercise: Exercise,
  index: number,
  patternBar: number,
): readonly (readonly Sticking[])[] | null {
  const hands = handsOf(exercise, index);
  const part = exercise.parts[index];
  if (!hands || !part) return null;
  let used = strokesOfBar(part.pattern, patternBar).from;
  return barOf(part.pattern, patternBar).map((cell) => {
    const from = used;
    used += struckSlots(cell).length;
    return hands.slice(from, used);
  });
}

function placePart(part: ExercisePart, bar: number, role: StrokeRole): readonly PlacedCell[] {
  return barOf(part.pattern, bar).map((cell, beat) => ({
    voice: part.voice,
    role,
    beat,
    cell,
    sticking: null,
  }));
}

function placeExercise(exercise: Exercise, patternBar: number): readonly PlacedCell[] {
  return exercise.parts.flatMap((part, index) => {
    const hands = stickingByBeat(exercise, index, patternBar);
    return placePart(part, patternBar, 'pattern').map((placed) =>
      hands ? { ...placed, sticking: hands[placed.beat] ?? null } : placed,
    );
  });
}

/** A cell with what the dynamics add at each of its slots. */
function loudened(lesson: Lesson, exercise: Exercise, patternBar: number) {
  const addedDb = loudnessOf(lesson, exercise);
  const starts = beatStarts(lesson.meter);
  return (placed: PlacedCell): PlacedCell => {
    const slots = placed.cell.marks.length;
    const start = starts[placed.beat] ?? fraction(0);
    const inBar = (slot: number) =>
      add(start, multiply(beatLength(lesson.meter, placed.beat), fraction(slot, slots)));
    return { ...placed, addedDb: placed.cell.marks.map((_, slot) => addedDb(patternBar, inBar(slot))) };
  };
}

/** What plays: voices of the groove, and the exercise as `pattern`. */
export type Playing = ReadonlySet<Voice | 'pattern'>;

/** Which bar of the groove plays. */
function grooveBar(exercise: Exercise | null, { bar, patternBar }: PlannedBar): number {
  return exercise?.repeats && patternBar !== null ? patternBar : bar;
}

/** The cells of one bar: groove, exercise and ending, with what the ending replaces taken out. */
export function cellsOfBar(
  lesson: Lesson,
  exercise: Exercise | null,
  planned: PlannedBar,
  playing: Playing,
): readonly PlacedCell[] {
  if (planned.play === 'rest') return [];
  const pattern = patternCells(lesson, exercise, planned, playing);
  const replaced = new Set(pattern.map((placed) => placed.voice));
  const groove = lesson.groove
    .filter((part) => playing.has(part.voice) && !replaced.has(part.voice))
    .flatMap((part) => placePart(part, grooveBar(exercise, planned), 'groove'))
    .filter(({ voice, beat }) => !isSilent(lesson, exercise, planned, playing, { voice, beat }));
  const cells = [...groove, ...pattern];
  return planned.ending && playing.has('pattern') ? endOn(cells, planned.ending, lesson.comping) : cells;
}

function patternCells(
  lesson: Lesson,
  exercise: Exercise | null,
  { patternBar }: PlannedBar,
  playing: Playing,
): readonly PlacedCell[] {
  if (!exercise || patternBar === null || !playing.has('pattern')) return [];
  const cells = placeExercise(exercise, patternBar);
  return exercise.dynamics ? cells.map(loudened(lesson, exercise, patternBar)) : cells;
}

/** Whether a voice of the groove is silent, since the exercise that plays wants it. */
function isSilent(
  lesson: Lesson,
  exercise: Exercise | null,
  { patternBar }: PlannedBar,
  playing: Playing,
  { voice, beat }: Pick<PlacedCell, 'voice' | 'beat'>,
): boolean {
  if (!exercise || patternBar === null || !playing.has('pattern')) return false;
  return isSilenced(lesson, exercise, voice, { bar: patternBar, beat });
}

function endOn(cells: readonly PlacedCell[], ending: Ending, comping: Voice): readonly PlacedCell[] {
  const beat = ending.beat - 1;
  const stays = (placed: PlacedCell) =>
    placed.beat !== beat || (placed.role === 'groove' && placed.voice !== comping);
  const accent = ending.voices.map(
    (voice): PlacedCell => ({ voice, role: 'ending', beat, cell: ending.cell, sticking: null }),
  );
  return [...cells.filter(stays), ...accent];
}
