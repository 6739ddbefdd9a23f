/**
 * An exercise as its teacher plays it, said so that a page can follow the recording without an ear of its own.
 *
 * Conventions: seconds from the beginning of what is heard of the recording; places in whole notes from the first bar
 * that was followed.
 */
import type { Bpm, Form, Lesson } from '@shedbook/core';
import { followExercise, type HeardExercise, inTakeOrder } from './as-played.ts';
import type { Knot } from './clock.ts';
import { landingsOf } from './landings.ts';
import { createProgram, type Program } from './program.ts';

/** An exercise as somebody plays it. */
export interface Demonstration {
  readonly exercise: number;
  readonly form: Form;
  /** Quarter notes a minute, about as fast as it is played. */
  readonly bpm: Bpm;
  /** The bars of the form, from 1, in the order in which they are played. */
  readonly formBars: readonly number[];
  /** Where the ball comes down, and when. */
  readonly knots: readonly Knot[];
  /** When strokes are heard: what is drawn out in slow motion lies between them. */
  readonly onsets: readonly number[];
  readonly seconds: number;
}

/** Seconds to 0.1 ms: a hundredth of what the ear tells apart. */
function rounded(seconds: number): number {
  return Math.round(seconds * 10_000) / 10_000;
}

/**
 * A demonstration of a performance.
 * @param lesson the section that the exercise stands in
 * @param sounding what of the recording is heard
 * @throws RangeError where nothing of it was followed
 */
export function demonstrate(
  lesson: Lesson,
  heard: HeardExercise,
  { fromSeconds, toSeconds }: { readonly fromSeconds: number; readonly toSeconds: number },
): Demonstration {
  const { form, bpm, played } = followExercise(lesson, heard);
  const { program, formBars, clock } = played;
  const landings = landingsOf(program).map(({ place }) => place);
  const places = [...new Set([program.start, ...landings, program.end])];
  const since = (seconds: number) => rounded(seconds - fromSeconds);
  const seconds = toSeconds - fromSeconds;
  const onsets = heard.report.strokes.map(({ timeSeconds }) => since(timeSeconds));
  return {
    ...{ exercise: heard.exercise, form, bpm, formBars },
    knots: places.map((place) => ({ place, seconds: since(clock.secondsAt(place)) })),
    onsets: [...new Set(onsets)].filter((onset) => onset >= 0 && onset <= seconds),
    seconds: rounded(seconds),
  };
}

/** What is played in a demonstration: its bars as they come, each with the number of the bar of the form that it is. */
export function demonstrated(
  lesson: Lesson,
  { exercise, form, bpm, formBars }: Pick<Demonstration, 'exercise' | 'form' | 'bpm' | 'formBars'>,
): Program {
  const program = createProgram(lesson, { exercise, form, bpm, layers: lesson.layers.length });
  return inTakeOrder(program, formBars, 'by the form');
}
