/**
 * Whether notes are of this exercise: with nothing to mishear, what was played settles it.
 *
 * Conventions: agreement as in `decide/agreement.ts`.
 */
import {
  agreement,
  betterExercise,
  type MatchedExercise,
  ownVoices,
  wrongExercise,
} from '../decide/agreement.ts';
import type { RefusalFact } from '../fact.ts';

/** How much better another exercise must agree before it is named. */
const CLEARLY_BETTER = 0.08;
/** From this agreement on an exercise is not doubted. */
const AGREES = 0.97;
/** Under this agreement of all strokes nothing was recognised. */
const NOTHING = 0.3;
/** Under this agreement of the exercise's own part it was not played. */
const NOT_PLAYED = 0.5;

/** What was found out about a take of notes. */
export interface NotesFit {
  /** Agreement of all strokes, 0 to 1. */
  readonly confidence: number;
  /** Why there is no report. */
  readonly refusal: RefusalFact | null;
}

/** Judges a take of notes. `others` matches the other exercises, asked for only where there is doubt. */
export function fitNotes(asked: MatchedExercise, others: () => readonly MatchedExercise[]): NotesFit {
  const { decision, grid } = asked;
  const all = new Set([...grid.voices, ...decision.strokes.map((stroke) => stroke.voice)]);
  const confidence = agreement(decision, all) ?? 0;
  if (confidence < NOTHING) return { confidence: 0, refusal: { fact: 'notes-of-no-exercise' } };
  const own = agreement(decision, ownVoices(grid)) ?? 1;
  if (own >= AGREES || asked.exercise === null) return { confidence, refusal: null };
  const better = betterExercise(asked, others(), CLEARLY_BETTER);
  if (better === null && own >= NOT_PLAYED) return { confidence, refusal: null };
  return { confidence, refusal: wrongExercise(asked.exercise, own, better) };
}
