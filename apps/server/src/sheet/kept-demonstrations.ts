/** Demonstrations that are kept with a lesson: of which exercise each is, and whether that is still played so. */
import { exerciseKey, jsonIn, type Lesson, patternsName, sectionOf, surroundingsOf } from '@shedbook/core';
import type { RecordedDemonstration } from '@shedbook/pack';

/** What a demonstration plays. */
export interface Played {
  /** Lasting name of the exercise. */
  readonly exercise: string;
  /** The exercise and what it is played over, as one text. */
  readonly plays: string;
}

/** A demonstration as it is kept. */
export interface KeptPlaying extends Played {
  /** JSON: the demonstration without its sound. */
  readonly facts: string;
  /** A FLAC file. */
  readonly flac: Uint8Array;
}

/** What is played in an exercise; null where the lesson has none with that number. */
export function playedIn(lesson: Lesson, number: number): Played | null {
  const exercise = lesson.exercises.find((each) => each.number === number);
  if (!exercise) return null;
  const plays = `${patternsName(exercise)}\n${surroundingsOf(sectionOf(lesson, number))}`;
  return { exercise: exerciseKey(exercise), plays };
}

/** The number of the exercise that is played in one now, null where it is gone, and whether it is played as it was then. */
export function standingOf(lesson: Lesson, { exercise, plays }: Played) {
  const found = lesson.exercises.find((each) => exerciseKey(each) === exercise);
  if (!found) return { number: null, isShown: false };
  return { number: found.number, isShown: playedIn(lesson, found.number)?.plays === plays };
}

/** What a demonstration says beside its sound; null where it cannot be read. */
export function demonstrationIn(facts: string): Omit<RecordedDemonstration, 'flac'> | null {
  return jsonIn(facts) as Omit<RecordedDemonstration, 'flac'> | null;
}

/** What students see and hear of those that are kept: each whose exercise is there and is played as it was then. */
export function shownOf(lesson: Lesson, kept: readonly KeptPlaying[]): readonly RecordedDemonstration[] {
  return kept.flatMap(({ facts, flac, ...played }) => {
    const { number, isShown } = standingOf(lesson, played);
    const told = demonstrationIn(facts);
    return number !== null && isShown && told ? [{ ...told, exercise: number, flac }] : [];
  });
}
