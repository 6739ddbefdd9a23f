/** The performances that a build writes as MIDI and sound. */
import {
  barsOf,
  defaultForm,
  exerciseOf,
  type Form,
  type Lesson,
  type Performance,
  perform,
} from '@shedbook/core';
import type { BuildRequest } from './request.ts';

/** Once through the pattern, without a count-in: what a standard file says of an exercise. */
function onceThrough(lesson: Lesson, exercise: number): Form {
  const bars = barsOf(exerciseOf(lesson, exercise));
  return { name: 'once', sections: [{ play: 'pattern', bars, ending: null }], repeat: 1, countInBars: 0 };
}

/** An exercise for MIDI: in the form that was asked for, else once through. */
export function performForMidi(lesson: Lesson, exercise: number, request: BuildRequest): Performance {
  const { bpm, mute } = request;
  const layers = request.layers.at(-1) ?? lesson.layers.length;
  return perform(lesson, {
    exercise,
    form: request.form ?? onceThrough(lesson, exercise),
    bpm,
    layers,
    mute,
  });
}

/** An exercise for listening, with some of the layers. */
export function performForSound(
  lesson: Lesson,
  exercise: number,
  request: BuildRequest,
  layers: number,
): Performance {
  const { bpm, mute } = request;
  return perform(lesson, { exercise, form: request.form ?? defaultForm(lesson), bpm, layers, mute });
}
