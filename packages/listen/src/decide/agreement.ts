/**
 * How well strokes agree with an exercise, and whether another one of the lesson agrees clearly better.
 *
 * Conventions: agreement is the F-measure of the strokes of the voices that an exercise's own part is written for,
 * 0 to 1; the groove, which all exercises of a lesson share, says nothing.
 */
import type { Voice } from '@shedbook/core';
import type { FormGrid } from '../align/form-grid.ts';
import type { RefusalFact } from '../fact.ts';
import type { Decision } from './strokes.ts';

/** An exercise of the lesson matched with what was played. */
export interface MatchedExercise {
  readonly exercise: number | null;
  readonly grid: FormGrid;
  readonly decision: Decision;
}

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

/** The exercise that agrees by `margin` better than the asked one and best of all, or null. */
export function betterExercise(
  asked: MatchedExercise,
  others: readonly MatchedExercise[],
  margin: number,
): number | null {
  let best: number | null = null;
  let most = 0;
  for (const other of others) {
    const voices = new Set([...ownVoices(asked.grid), ...ownVoices(other.grid)]);
    const agrees = agreement(other.decision, voices) ?? 0;
    if (agrees < (agreement(asked.decision, voices) ?? 0) + margin || agrees <= most) continue;
    best = other.exercise;
    most = agrees;
  }
  return best;
}

/** Why a take of another exercise gets no report. @param own agreement with the asked one, 0 to 1. */
export function wrongExercise(exercise: number, own: number, better: number | null): RefusalFact {
  const percent = 100 * own;
  return better === null
    ? { fact: 'not-the-exercise', exercise, percent }
    : { fact: 'rather-exercise', exercise, percent, played: better };
}
