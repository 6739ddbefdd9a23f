/**
 * Whether the take is of this exercise at all, and how sure that is.
 *
 * Conventions: confidence 0 to 1; refusals are facts.
 */
import type { Alignment } from '../align/align.ts';
import type { FormGrid } from '../align/form-grid.ts';
import type { RefusalFact } from '../fact.ts';
import { agreement, ownVoices } from './agreement.ts';
import type { Place } from './places.ts';
import type { Decision } from './strokes.ts';

/** What is judged. */
export interface FitInput {
  readonly grid: FormGrid;
  readonly alignment: Alignment;
  readonly decision: Decision;
  /** Whether an exercise was asked for, and not time only. */
  readonly isExercise: boolean;
  /** Number of another exercise that was rather played. */
  readonly rather: number | undefined;
}

/** Under this share of what is written, and under this match of a written stroke, nothing was recognised. */
const LEAST_HEARD = 0.3;
const LEAST_MATCH = -0.25;
/** Where fewer of the strokes than this are written ones, another groove was played; limbs may stay out all the same. */
const LEAST_WRITTEN = 0.6;
/**
 * Where so much of what is written was heard, and so little else, the exercise was played, however much of it a limb that
 * stays out takes from the match of the whole.
 */
const WELL_HEARD = 0.6;
const HARDLY_ELSE = 0.9;
/** Confidence in what is said of an exercise while another one was played. */
const OF_ANOTHER = 0.1;

/** The judgement. */
export interface Fit {
  readonly confidence: number;
  /** Of the exercise's own strokes, 0 to 1. */
  readonly agreement: number;
  readonly refusal: RefusalFact | null;
}

function share(decision: Decision, keep: (place: Place) => boolean): number | null {
  const heard = decision.strokes.filter((stroke) => stroke.place && keep(stroke.place)).length;
  const due = heard + decision.missed.filter(keep).length;
  return due >= 4 ? heard / due : null;
}

/** Judges a take. Another exercise of the lesson is no refusal: the report says how little of the asked one is there. */
export function judgeFit({ grid, decision, alignment, isExercise, rather }: FitInput): Fit {
  const all = share(decision, () => true) ?? 0;
  const bars = alignment.bars.filter((bar) => bar.formBar !== null).length;
  const heard = decision.strokes.filter((stroke) => stroke.place).length;
  const own = isExercise ? (agreement(decision, ownVoices(grid)) ?? 1) : 1;
  const none: Fit = { confidence: 0, agreement: own, refusal: { fact: 'sound-of-no-exercise' } };
  if (bars < 1 || heard < 3) return none;
  if (rather !== undefined) return { confidence: OF_ANOTHER, agreement: own, refusal: null };
  const precision = heard / Math.max(1, decision.strokes.length);
  const isWellHeard = all >= WELL_HEARD && precision >= HARDLY_ELSE;
  const isMatched = alignment.matchPerStroke >= LEAST_MATCH || isWellHeard;
  if (all < LEAST_HEARD || !isMatched || precision < LEAST_WRITTEN) return none;
  const length = Math.min(1, bars / Math.max(1, Math.min(4, grid.bars.length)));
  const confidence = Math.min(all, own) * precision * (0.7 + 0.3 * length);
  return { confidence: Math.max(0, Math.min(1, confidence)), agreement: own, refusal: null };
}
