/**
 * Whether notes are of this exercise: with nothing to mishear, what was played settles it.
 *
 * Conventions: agreement as in `decide/agreement.ts`.
 */
import type { FormGrid } from '../align/form-grid.ts';
import { agreement, ownVoices } from '../decide/agreement.ts';
import type { Decision } from '../decide/strokes.ts';
import type { RefusalFact } from '../fact.ts';

/** Under this agreement of all strokes nothing was recognised. */
const NOTHING = 0.3;

/** What was found out about a take of notes. */
export interface NotesFit {
  /** Agreement of all strokes, 0 to 1. */
  readonly confidence: number;
  /** Of the exercise's own strokes, 0 to 1. */
  readonly agreement: number;
  /** Why there is no report. */
  readonly refusal: RefusalFact | null;
}

/**
 * Judges a take of notes. Another exercise of the lesson is no refusal, as with a recording.
 * @param rather number of another exercise that was rather played
 */
export function fitNotes(grid: FormGrid, decision: Decision, rather: number | undefined): NotesFit {
  const all = new Set([...grid.voices, ...decision.strokes.map((stroke) => stroke.voice)]);
  const confidence = agreement(decision, all) ?? 0;
  const own = agreement(decision, ownVoices(grid)) ?? 1;
  const isNothing = confidence < NOTHING && rather === undefined;
  return {
    confidence: isNothing ? 0 : confidence,
    agreement: own,
    refusal: isNothing ? { fact: 'notes-of-no-exercise' } : null,
  };
}
