/**
 * What is expected of a student: the strokes of an exercise in its form, of the voices that the student plays.
 *
 * Conventions: a rim shot is a stroke on the snare, whoever plays the one plays the other. A brush that is drawn over
 * the head is not asked for: it begins at no moment that could be heard.
 */
import { hasOnset, perform, type Stroke, type Voice } from '@shedbook/core';
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

/** The grid of an exercise as it is asked, or of another one of the lesson; all voices where none is the student's. */
export function askedGrid(asked: Asked, exercise = asked.exercise): FormGrid {
  const { lesson, form, bpm = lesson.tempo.startBpm } = asked;
  const performance = perform(lesson, { exercise, form, bpm });
  const isMine = isPlayed(asked);
  const isAsked = ({ voice }: Stroke) => voice !== 'click' && isMine(voice);
  const mine = performance.strokes.filter((stroke) => isAsked(stroke) || !hasOnset(stroke));
  const strokes = mine.some(hasOnset) ? mine : performance.strokes;
  return formGrid({ ...performance, strokes }, lesson.meter);
}
