/**
 * Whether notes are of this exercise: with nothing to mishear, what was played settles it.
 *
 * Conventions: agreement is the F-measure of the strokes of the voices that an exercise's own part is written for,
 * 0 to 1; the groove, which all exercises of a lesson share, says nothing.
 */
import type { Voice } from '@shedbook/core';
import type { FormGrid } from '../align/form-grid.ts';
import type { Decision } from '../decide/strokes.ts';
import type { Refusal } from '../listen.ts';

/** How much better another exercise must agree before it is named. */
const CLEARLY_BETTER = 0.08;
/** From this agreement on an exercise is not doubted. */
const AGREES = 0.97;
/** Under this agreement of all strokes nothing was recognised. */
const NOTHING = 0.3;
/** Under this agreement of the exercise's own part it was not played. */
const NOT_PLAYED = 0.5;

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

/** An exercise of the lesson matched with the notes. */
export interface MatchedExercise {
  readonly exercise: number | null;
  readonly grid: FormGrid;
  readonly decision: Decision;
}

/** What was found out about a take of notes. */
export interface NotesFit {
  /** Agreement of all strokes, 0 to 1. */
  readonly confidence: number;
  /** Why there is no report. */
  readonly refusal: Refusal | null;
}

const NO_EXERCISE =
  'What was played does not follow this exercise. Is it another lesson, or another form or meter?';

/** The exercise that the notes are clearly rather of, or null. */
function betterExercise(asked: MatchedExercise, others: readonly MatchedExercise[]): number | null {
  let best: number | null = null;
  let most = 0;
  for (const other of others) {
    const voices = new Set([...ownVoices(asked.grid), ...ownVoices(other.grid)]);
    const agrees = agreement(other.decision, voices) ?? 0;
    if (agrees < (agreement(asked.decision, voices) ?? 0) + CLEARLY_BETTER || agrees <= most) continue;
    best = other.exercise;
    most = agrees;
  }
  return best;
}

function wrongExercise(asked: MatchedExercise, own: number, better: number | null): Refusal {
  const share = `${Math.round(100 * own)} % of its own strokes agree`;
  const message =
    better === null
      ? `The groove is there, but not exercise ${asked.exercise}: ${share}. Is it another exercise?`
      : `This is not exercise ${asked.exercise} (${share}) but rather exercise ${better}.`;
  return { code: 'wrong-exercise', message };
}

/** Judges a take of notes. `others` matches the other exercises, asked for only where there is doubt. */
export function fitNotes(asked: MatchedExercise, others: () => readonly MatchedExercise[]): NotesFit {
  const { decision, grid } = asked;
  const all = new Set([...grid.voices, ...decision.strokes.map((stroke) => stroke.voice)]);
  const confidence = agreement(decision, all) ?? 0;
  if (confidence < NOTHING) return { confidence: 0, refusal: { code: 'no-drums', message: NO_EXERCISE } };
  const own = agreement(decision, ownVoices(grid)) ?? 1;
  if (own >= AGREES || asked.exercise === null) return { confidence, refusal: null };
  const better = betterExercise(asked, others());
  if (better === null && own >= NOT_PLAYED) return { confidence, refusal: null };
  return { confidence, refusal: wrongExercise(asked, own, better) };
}
