/**
 * How well strokes agree with an exercise.
 *
 * Conventions: agreement is the F-measure of the strokes of the voices that an exercise's own part is written for,
 * 0 to 1; the groove, which all exercises of a lesson share, says nothing.
 */
import type { Voice } from '@shedbook/core';
import type { FormGrid } from '../align/form-grid.ts';
import type { Decision } from './strokes.ts';

/** The voices that an exercise's own part has somewhere in a form. */
export function ownVoices(grid: FormGrid): ReadonlySet<Voice> {
  const own = grid.bars.flatMap((bar) => bar.strokes.filter(({ stroke }) => stroke.role === 'pattern'));
  return new Set(own.map((stroke) => stroke.voice));
}

/** Agreement of the strokes of some voices; null when there are none, written or played. */
export function agreement(decision: Decision, voices: ReadonlySet<Voice>): number | null {
  const strokes = decision.strokes.filter((stroke) => voices.has(stroke.voice));
  const hits = strokes.filter((stroke) => stroke.place).length;
  const missed = decision.missed.filter((place) => voices.has(place.expected.voice)).length;
  const all = strokes.length + hits + missed;
  return all === 0 ? null : (2 * hits) / all;
}
