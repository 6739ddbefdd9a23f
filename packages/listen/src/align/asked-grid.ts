/**
 * What is expected of a student: the strokes of an exercise in its form, of the voices that the student plays.
 *
 * Conventions: a rim shot is a stroke on the snare, whoever plays the one plays the other. A brush that is drawn over
 * the head is not asked for: it begins at no moment that could be heard.
 */
import {
  type Form,
  hasOnset,
  type Lesson,
  type Performance,
  perform,
  type Stroke,
  type Voice,
} from '@shedbook/core';
import type { Asked } from '../listened.ts';
import { type FormGrid, formGrid } from './form-grid.ts';

function surfaceOf(voice: Voice): Voice {
  return voice === 'rimshot' ? 'snare' : voice;
}

/** Whether a voice is the student's. */
export function isPlayed({ plays = [] }: Pick<Asked, 'plays'>): (voice: Voice) => boolean {
  if (plays.length === 0) return () => true;
  const surfaces = new Set(plays.map(surfaceOf));
  return (voice) => surfaces.has(surfaceOf(voice));
}

/** Performances of exercises of a lesson in a form, kept as long as the two are. */
const known = new WeakMap<Lesson, WeakMap<Form, Map<string, Performance>>>();
/** So many are kept of a form, at several tempi; then all are forgotten. */
const MOST_KEPT = 256;

/** An exercise of the lesson in the form and tempo that are asked; a take is heard as each of them again and again. */
export function performed({ lesson, form, bpm }: Asked, exercise: number | null): Performance {
  const ofLesson = known.get(lesson) ?? new WeakMap<Form, Map<string, Performance>>();
  known.set(lesson, ofLesson);
  const ofForm = ofLesson.get(form) ?? new Map<string, Performance>();
  ofLesson.set(form, ofForm);
  const key = `${exercise} ${bpm}`;
  const before = ofForm.get(key);
  if (before) return before;
  if (ofForm.size >= MOST_KEPT) ofForm.clear();
  const performance = perform(lesson, { exercise, form, bpm: bpm ?? lesson.tempo.startBpm });
  ofForm.set(key, performance);
  return performance;
}

/** The grid of an exercise as it is asked, or of another one of the lesson; all voices where none is the student's. */
export function askedGrid(asked: Asked, exercise = asked.exercise): FormGrid {
  const performance = performed(asked, exercise);
  const isMine = isPlayed(asked);
  const isAsked = ({ voice }: Stroke) => voice !== 'click' && isMine(voice);
  const mine = performance.strokes.filter((stroke) => isAsked(stroke) || !hasOnset(stroke));
  const strokes = mine.some(hasOnset) ? mine : performance.strokes;
  return formGrid({ ...performance, strokes }, asked.lesson.meter);
}
