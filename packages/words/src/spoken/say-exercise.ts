/** An exercise read out by its counts. */
import type { Exercise, ExercisePart } from '@shedbook/core';
import type { DeskWords } from '../screens/desk.ts';
import { spokenMark } from './mark-words.ts';
import { sayPattern } from './spoken.ts';

/** The words that it takes. */
type ExerciseWords = Pick<DeskWords, 'voices' | 'marks' | 'counts'>;

function sayPart({ pattern, voice }: ExercisePart, { counts, marks }: ExerciseWords): string {
  const bars = sayPattern(counts, pattern, (mark) => spokenMark(marks, voice, mark));
  const said = bars.map((bar) => (bar === '' ? counts.silent : bar));
  const numbered = said.map((bar, index) => `${counts.bar({ n: index + 1 })}: ${bar}`);
  return (said.length === 1 ? said : numbered).join('; ');
}

/** The counts of an exercise, voice by voice and bar by bar; one voice alone is named where asked for. */
export function sayExercise(
  exercise: Exercise,
  words: ExerciseWords,
  named: 'always' | 'where several' = 'where several',
): string {
  const { parts } = exercise;
  const isNamed = named === 'always' || parts.length > 1;
  return parts
    .map((part) => (isNamed ? `${words.voices[part.voice]}: ` : '') + sayPart(part, words))
    .join('. ');
}
