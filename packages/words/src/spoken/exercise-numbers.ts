/** Numbers of exercises in words. */
import type { FilmWords } from '../screens/film.ts';

/** Exercises by their numbers: one, a row of them, or some. */
export function exercisesInWords(
  { exercises }: Pick<FilmWords, 'exercises'>,
  numbers: readonly number[],
): string {
  const [from = 0] = numbers;
  const to = numbers.at(-1) ?? from;
  if (numbers.length === 1) return exercises.one({ from });
  const isRow = numbers.length > 2 && to - from === numbers.length - 1;
  return isRow ? exercises.row({ from, to }) : exercises.some({ numbers });
}
