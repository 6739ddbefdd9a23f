import type { Lesson } from '@shedbook/core';
import { parseLesson } from '@shedbook/core';
import { expect, it } from 'vitest';
import { NUMBERED_ANEW } from '../../../../internal/testing/numbered-anew.ts';
import { ENGLISH } from '../english/english.ts';
import { say } from '../facts/say.ts';
import { GERMAN } from '../german/german.ts';
import { CLI } from '../screens/cli.ts';
import { loadDesk } from '../screens/desk.ts';
import { FILM_WORDS } from '../screens/film.ts';
import { exercisesInWords } from '../spoken/exercise-numbers.ts';

const [, , both, third] = (parseLesson(NUMBERED_ANEW, 'anew').lesson as Lesson).exercises.map(
  ({ number }) => number,
);
if (both === undefined || third === undefined) throw new Error('the lesson has five exercises');

it('[WO7002] messages and sentences say the number that stands on the page', async () => {
  const [english, german] = await Promise.all([loadDesk('en'), loadDesk('de')]);
  expect(say({ fact: 'exercise-played', exercise: both }, ENGLISH)).toBe('Exercise B2 was played.');
  expect(say({ fact: 'exercise-played', exercise: both }, GERMAN)).toBe('Gespielt wurde Übung B2.');
  expect(german.words.page.exercise({ n: third })).toBe('Übung B3');
  expect(CLI.en.words.expected.exerciseTo({ first: both, last: third })).toBe('a number from B2 to B3');
  expect(exercisesInWords(FILM_WORDS.en, [both, third])).toBe('Exercises B2 and B3');
  // a number from 1,000 on is no amount: it has no separators
  expect(english.words.page.exercise({ n: 1000 })).toBe('Exercise 1000');
});
