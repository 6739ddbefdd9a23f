/**
 * Taking an exercise apart where it is stuck: the whole slower, the sore cell alone, the move into it alone, two limbs,
 * sung and counted; then the whole again.
 *
 * Conventions: a part is a lesson like any other, in which the exercise is what is left of it, so that it is played,
 * drawn, heard and judged as everything else is. Beats from 1. The name of a part stands in the log as the form that
 * was played.
 * Sources: part practice and its limits: Wightman & Lintern (1985), Human Factors 27(3), 267–283; the order is common
 * practice of teachers.
 */
import {
  cell,
  EXAMPLE_FORM,
  type Exercise,
  type ExercisePart,
  formatPattern,
  handedParts,
  isRest,
  type Lesson,
  SILENT_SLOT,
  sectionOf,
  withoutSlots,
} from '@shedbook/core';

/** How an exercise is taken apart, in the order in which it is tried. */
export const PART_KINDS = ['slower', 'cell alone', 'move alone', 'two limbs', 'sung'] as const;
/** How an exercise is taken apart. */
export type PartKind = (typeof PART_KINDS)[number];

/** A part of an exercise. */
export interface PracticePart {
  readonly kind: PartKind;
  /** The beat that it is about, from 1: of the bar that has most to do there. */
  readonly beat: number;
}

/**
 * Whether a form that was played tells nothing of the whole exercise: a part of it, or an example that was listened to.
 */
export function isPart(form: string): boolean {
  if (form === EXAMPLE_FORM) return true;
  return form !== 'slower' && PART_KINDS.some((kind) => kind === form);
}

/** A number of a beat, from 1, as a place in a bar of so many, from 0; the beat before the first is the last. */
function placeOf(beat: number, beats: number): number {
  return (beat - 1 + beats) % Math.max(1, beats);
}

function textAt({ pattern }: ExercisePart, bar: number, beat: number): string {
  const cells = pattern.bars[bar] ?? [];
  return cells[placeOf(beat, cells.length)]?.text ?? '.';
}

/** The bar, from 0, in which the comping voice has most strokes on a beat. */
function fullestBar({ parts }: Exercise, beat: number): number {
  const [first] = parts;
  if (!first) return 0;
  const strokes = first.pattern.bars.map((_, bar) => textAt(first, bar, beat).replaceAll(/[.~]/g, '').length);
  return Math.max(0, strokes.indexOf(Math.max(...strokes)));
}

/** The beat on which the comping voice has most strokes, from 1. */
export function busiestBeat(exercise: Exercise): number {
  const bars = exercise.parts[0]?.pattern.bars ?? [];
  const beats = bars[0]?.length ?? 1;
  const strokes = Array.from({ length: beats }, (_, beat) =>
    bars.reduce((sum, bar) => sum + (bar[beat]?.text.replaceAll(/[.~]/g, '').length ?? 0), 0),
  );
  return 1 + Math.max(0, strokes.indexOf(Math.max(...strokes)));
}

/** What an exercise says at a place, said of a bar that is all of it: how loud it is there, and whether the groove rests. */
function saidThere(exercise: Exercise, bar: number, beat: number): Exercise {
  const { dynamics, above: _a, below: _b, fill, repeats: _r, barRepeats: _s, ...rest } = exercise;
  const isBy = (at: { readonly bar: number; readonly beat: number }) =>
    at.bar < bar || (at.bar === bar && at.beat <= beat);
  const loud = dynamics?.findLast((sign) => sign.mark !== null && isBy(sign));
  return {
    ...rest,
    ...(loud ? { dynamics: [{ ...loud, bar: 0, beat: 0, hairpin: null }] } : {}),
    ...(fill && isBy(fill) ? { fill: { ...fill, bar: 0, beat: 0 } } : {}),
  };
}

/** The exercise as a bar that goes through one cell, or the move into it, again and again; hands go with their strokes. */
function drilled(exercise: Exercise, kind: PartKind, beat: number): Exercise {
  const bar = fullestBar(exercise, beat);
  const beats = exercise.parts[0]?.pattern.bars[bar]?.length ?? 1;
  const from = kind === 'move alone' ? [beat - 1, beat] : [beat];
  const places = from.map((each) => placeOf(each, beats));
  const parts = handedParts(exercise).map(({ voice, bars }) => {
    const own = places.map((at) => bars[bar]?.[at] ?? [SILENT_SLOT]);
    return { voice, bars: [Array.from({ length: beats }, (_, at) => own[at % own.length] ?? [])] };
  });
  return { ...saidThere(exercise, bar, placeOf(beat, beats)), ...withoutSlots(parts) };
}

/** Whether a part has strokes. */
function sounds(exercise: Exercise): boolean {
  return exercise.parts.some(({ pattern }) =>
    formatPattern(pattern)
      .split(/[\s|]+/)
      .some((text) => !isRest(cell(text))),
  );
}

/**
 * The section of an exercise, in which it is one of its parts; the section itself where the part is the whole, slower or sung.
 * @param number of the exercise, from 1
 */
export function takeApart(whole: Lesson, number: number, { kind, beat }: PracticePart): Lesson {
  const lesson = sectionOf(whole, number);
  if (kind === 'two limbs') {
    const lead = lesson.limbs[lesson.lead];
    return { ...lesson, groove: lesson.groove.filter(({ voice }) => lesson.limbs[voice] === lead) };
  }
  if (kind !== 'cell alone' && kind !== 'move alone') return lesson;
  const exercises = lesson.exercises.map((exercise) => {
    if (exercise.number !== number) return exercise;
    const part = drilled(exercise, kind, beat);
    return sounds(part) ? part : drilled(exercise, kind, busiestBeat(exercise));
  });
  return { ...lesson, exercises };
}
