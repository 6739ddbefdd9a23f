import { expect, it } from 'vitest';
import { ENGLISH } from '../english/english.ts';
import { GERMAN } from '../german/german.ts';
import { say } from './say.ts';

it('[LI17] a take of another exercise is said with the number of the one that was played', () => {
  const other = { fact: 'rather-exercise', exercise: 3, percent: 41.6, played: 12 } as const;
  expect([ENGLISH, GERMAN].map((language) => say(other, language))).toEqual([
    'This is not exercise 3 (42 % of its own strokes agree) but rather exercise 12.',
    'Das ist nicht Übung 3 (42 % ihrer eigenen Schläge stimmen überein), sondern eher Übung 12.',
  ]);
});

it('[LI46] a voice begins its sentence with the article of the language', () => {
  const { voices } = GERMAN.tongue;
  const voice = 'hihat-open';
  // standard: Duden: die Hi-Hat
  expect([voices[voice], say({ fact: 'hard-to-tell', voice }, GERMAN).slice(0, 25)]).toEqual([
    'offene Hi-Hat',
    'Die offene Hi-Hat ist in ',
  ]);
  expect(say({ fact: 'not-heard', voice: 'bass' }, ENGLISH)).toMatch(/^The bass drum was not heard/);
});
