/**
 * Hands: which of them plays each stroke of an exercise, voice by voice.
 *
 * Conventions: those of the first voice are the exercise's `sticking`; those of another stand with its part. Hands that
 * do not fit their strokes any more, since the pattern was changed under them, are none.
 */
import { countStrokes, type Pattern } from '../rhythm/pattern.ts';
import type { Hand, Hands } from './hand.ts';
import type { Exercise, ExercisePart } from './lesson.ts';

/** What of an exercise says which hands play. */
type Handed = Pick<Exercise, 'parts' | 'sticking'>;

function fitting(hands: Hands | null | undefined, pattern: Pattern): Hands | null {
  return hands && hands.length > 0 && hands.length === countStrokes(pattern.bars.flat()) ? hands : null;
}

/** The hands of a part of an exercise (from 0), one for each stroke, or null where none are written. */
export function handsOf({ parts, sticking }: Handed, part: number): Hands | null {
  const of = parts[part];
  if (!of) return null;
  return (part === 0 ? fitting(sticking, of.pattern) : null) ?? fitting(of.hands, of.pattern);
}

/** Whether hands are written for any voice of an exercise. */
export function isSticked(exercise: Handed): boolean {
  return exercise.parts.some((_, part) => handsOf(exercise, part) !== null);
}

/** A part with its hands, or without any. */
export function withHands({ voice, pattern }: ExercisePart, hands: Hands | null): ExercisePart {
  return hands === null ? { voice, pattern } : { voice, pattern, hands };
}

/** What two hands are that strike at one moment: the same one, or both. */
export function handsTogether(hands: readonly Hand[]): Hand | null {
  const [first = null] = hands;
  return hands.every((hand) => hand === first) ? first : 'B';
}
