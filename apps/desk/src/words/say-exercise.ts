/** An exercise read out by its counts. */
import type { Exercise } from '@shedbook/core';
import { type DeskWords, sayPattern, spokenMark } from '@shedbook/words';

/** The counts of an exercise, bar by bar. */
export function sayExercise(exercise: Exercise, words: DeskWords): string {
  return exercise.parts
    .map((part) => {
      const bars = sayPattern(part.pattern, (mark) => spokenMark(words.marks, part.voice, mark));
      const said = bars.map((bar) => (bar === '' ? words.page.silent : bar));
      const counts =
        said.length === 1
          ? said[0]
          : said.map((bar, i) => `${words.page.bar({ n: i + 1 })}: ${bar}`).join('; ');
      return exercise.parts.length === 1 ? counts : `${words.voices[part.voice]}: ${counts}`;
    })
    .join('. ');
}
