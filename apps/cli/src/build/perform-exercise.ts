/** The performances that a build writes as MIDI and sound. */
import { barsOf, exerciseOf, type Form, type Lesson, type Performance, perform } from '@shedbook/core';
import type { BuildRequest } from './request.ts';

/** Once through the pattern, without a count-in: what a standard file says of an exercise. */
function onceThrough(lesson: Lesson, exercise: number): Form {
  const bars = barsOf(exerciseOf(lesson, exercise));
  return { name: 'once', sections: [{ play: 'pattern', bars, ending: null }], repeat: 1, countInBars: 0 };
}

/** What to hear of an exercise where no form was asked for. */
function usualForm(lesson: Lesson): Form {
  const loop = lesson.forms.find((form) => form.name.toLowerCase() === 'loop') ?? lesson.forms[0];
  if (!loop) throw new RangeError('Internal error: a lesson without forms');
  return loop;
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
  return perform(lesson, { exercise, form: request.form ?? usualForm(lesson), bpm, layers, mute });
}
