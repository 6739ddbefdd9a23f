/** An exercise read out by its counts. */
import type { Exercise } from '@shedbook/core';
import type { PracticeWords } from '@shedbook/words';
import { sayPattern, spokenMark } from '@shedbook/words';

/** The counts of every voice of an exercise, bar by bar. */
export function sayExercise(exercise: Exercise, words: PracticeWords): string {
  const voices = exercise.parts.map(({ voice, pattern }) => {
    const bars = sayPattern(pattern, (mark) => spokenMark(words.marks, voice, mark));
    const said = bars.map((bar) => (bar === '' ? words.sheet.silent : bar));
    const counts =
      said.length === 1
        ? said[0]
        : said.map((bar, index) => `${words.sheet.bar({ n: index + 1 })}: ${bar}`).join('; ');
    return `${words.voices[voice]}: ${counts}`;
  });
  return voices.join('. ');
}
