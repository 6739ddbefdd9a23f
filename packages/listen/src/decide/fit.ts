/**
 * Whether the take is of this exercise at all, and how sure that is.
 *
 * Conventions: confidence 0 to 1; refusals are sentences for people.
 */
import type { Alignment } from '../align/align.ts';
import type { FormGrid } from '../align/form-grid.ts';
import type { Refusal } from '../listen.ts';
import type { Evidence } from './adapt.ts';
import type { Place } from './places.ts';
import type { Decision } from './strokes.ts';

/** What is judged. */
export interface FitInput {
  readonly grid: FormGrid;
  readonly alignment: Alignment;
  readonly decision: Decision;
  readonly evidence: readonly Evidence[];
  readonly places: readonly Place[];
  readonly durationSeconds: number;
}

/** The judgement. */
export interface Fit {
  readonly confidence: number;
  readonly refusal: Refusal | null;
}

function share(decision: Decision, keep: (place: Place) => boolean): number | null {
  const heard = decision.strokes.filter((stroke) => stroke.place && keep(stroke.place)).length;
  const due = heard + decision.missed.filter(keep).length;
  return due >= 4 ? heard / due : null;
}

/** Judges a take. */
export function judgeFit({ grid, decision, alignment }: FitInput): Fit {
  const all = share(decision, () => true) ?? 0;
  const pattern = share(decision, (place) => place.expected.stroke.role === 'pattern');
  const extras = decision.strokes.filter((stroke) => !stroke.place).length;
  const heard = decision.strokes.length - extras;
  const bars = alignment.bars.filter((bar) => bar.formBar !== null).length;
  if (bars < 1 || heard < 3 || all < 0.3 || alignment.matchPerStroke < -0.35) {
    return {
      confidence: 0,
      refusal: {
        code: 'no-drums',
        message: 'What is heard does not follow this exercise. Is this a recording of a drum set playing it?',
      },
    };
  }
  if (pattern !== null && pattern < 0.45) {
    return {
      confidence: 0.1,
      refusal: {
        code: 'wrong-exercise',
        message: `The groove is there, but only ${Math.round(100 * pattern)} % of the exercise's own strokes. Is it another exercise?`,
      },
    };
  }
  const precision = heard / Math.max(1, heard + extras);
  const least = Math.min(all, pattern ?? 1);
  const length = Math.min(1, bars / Math.max(1, Math.min(4, grid.bars.length)));
  return { confidence: Math.max(0, Math.min(1, least * precision * (0.7 + 0.3 * length))), refusal: null };
}
