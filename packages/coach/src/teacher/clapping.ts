/**
 * What counting and clapping is for: the exercise that needs its subdivision.
 *
 * Conventions: that is the first of a section which names the clapped one as what comes first, else the next of the
 * lesson that is played.
 */
import { isClapped, sectionNamed } from '@shedbook/core';
import type { AddsCountFact, AddsNothingFact } from '../fact.ts';
import type { ExerciseStanding } from '../mastery/exercises.ts';

/** The exercise that a clapped one is a preparation for, or undefined where it stands before nothing. */
function preparedFor(
  clapped: ExerciseStanding,
  standings: readonly ExerciseStanding[],
): ExerciseStanding | undefined {
  const played = standings.filter(({ id, exercise }) => id === clapped.id && !isClapped(exercise));
  const naming = played.find(
    ({ lesson: { before } }) => before !== undefined && sectionNamed([clapped.lesson], before) !== null,
  );
  return naming ?? played.find(({ exercise }) => exercise.number > clapped.exercise.number);
}

/** What a clapped exercise adds, as a teacher says it. */
export function clappingAdds(
  clapped: ExerciseStanding,
  standings: readonly ExerciseStanding[],
): AddsCountFact | AddsNothingFact {
  const needing = preparedFor(clapped, standings);
  return needing ? { fact: 'adds-count', exercise: needing.exercise.number } : { fact: 'adds-clapping' };
}
