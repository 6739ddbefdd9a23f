/**
 * Whether the take is of this exercise at all, and how sure that is.
 *
 * Conventions: confidence 0 to 1; refusals are facts.
 */
import type { Voice } from '@shedbook/core';
import type { Alignment } from '../align/align.ts';
import type { FormGrid } from '../align/form-grid.ts';
import type { RefusalFact } from '../fact.ts';
import { agreement, ownVoices, wrongExercise } from './agreement.ts';
import type { Place } from './places.ts';
import type { Decision } from './strokes.ts';

/** What is judged. */
export interface FitInput {
  readonly grid: FormGrid;
  readonly alignment: Alignment;
  readonly decision: Decision;
  /** The exercise that was asked for, or null for time only. */
  readonly exercise: number | null;
  /** Number of an exercise that agrees clearly better, or null. */
  readonly better: () => number | null;
}

/** Under this share of what is written, and under this match of a written stroke, nothing was recognised. */
const LEAST_HEARD = 0.3;
const LEAST_MATCH = -0.25;
/** Where fewer of the strokes than this are written ones, another groove was played; limbs may stay out all the same. */
const LEAST_WRITTEN = 0.6;
/** From this agreement on an exercise is not doubted; under the second it was not played. */
const AGREES = 0.9;
const NOT_PLAYED = 0.5;
/** So many strokes elsewhere for one that was due are another exercise; fewer are a voice that is badly heard. */
const ELSEWHERE = 0.2;

/** The judgement. */
export interface Fit {
  readonly confidence: number;
  readonly refusal: RefusalFact | null;
}

function share(decision: Decision, keep: (place: Place) => boolean): number | null {
  const heard = decision.strokes.filter((stroke) => stroke.place && keep(stroke.place)).length;
  const due = heard + decision.missed.filter(keep).length;
  return due >= 4 ? heard / due : null;
}

/** Whether a limb plays something else: strokes where none are written, and not only some that are not heard. */
function playsElse(decision: Decision, voices: ReadonlySet<Voice>): boolean {
  const own = decision.strokes.filter((stroke) => voices.has(stroke.voice));
  const missed = decision.missed.filter((place) => voices.has(place.expected.voice)).length;
  const due = own.filter((stroke) => stroke.place).length + missed;
  return own.filter((stroke) => !stroke.place).length >= ELSEWHERE * due;
}

/** Judges a take. `better` looks for another exercise that agrees better, asked for only where there is doubt. */
export function judgeFit({ grid, decision, alignment, exercise, better }: FitInput): Fit {
  const all = share(decision, () => true) ?? 0;
  const bars = alignment.bars.filter((bar) => bar.formBar !== null).length;
  const heard = decision.strokes.filter((stroke) => stroke.place).length;
  if (bars < 1 || heard < 3 || all < LEAST_HEARD || alignment.matchPerStroke < LEAST_MATCH) {
    return { confidence: 0, refusal: { fact: 'sound-of-no-exercise' } };
  }
  const own = exercise === null ? 1 : (agreement(decision, ownVoices(grid)) ?? 1);
  const other = own < AGREES ? better() : null;
  const isOther = other !== null || (own < NOT_PLAYED && playsElse(decision, ownVoices(grid)));
  if (exercise !== null && isOther) return { confidence: 0.1, refusal: wrongExercise(exercise, own, other) };
  const precision = heard / Math.max(1, decision.strokes.length);
  if (precision < LEAST_WRITTEN) {
    return { confidence: 0, refusal: { fact: 'sound-of-no-exercise' } };
  }
  const length = Math.min(1, bars / Math.max(1, Math.min(4, grid.bars.length)));
  const confidence = Math.min(all, own) * precision * (0.7 + 0.3 * length);
  return { confidence: Math.max(0, Math.min(1, confidence)), refusal: null };
}
