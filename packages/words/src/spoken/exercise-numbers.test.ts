import { expect, it } from 'vitest';
import { FILM_WORDS } from '../screens/film.ts';
import { exercisesInWords } from './exercise-numbers.ts';

it('[WO7200] names two exercises, a row of more by its ends, and others one by one', () => {
  const said = (numbers: readonly number[]) =>
    [FILM_WORDS.en, FILM_WORDS.de].map((words) => exercisesInWords(words, numbers));
  expect(said([3])).toEqual(['Exercise 3', 'Übung 3']);
  expect(said([1, 2])).toEqual(['Exercises 1 and 2', 'Übungen 1 und 2']);
  expect(said([1, 2, 3])).toEqual(['Exercises 1 to 3', 'Übungen 1 bis 3']);
  expect(said([1, 3, 4])).toEqual(['Exercises 1, 3 and 4', 'Übungen 1, 3 und 4']);
});
