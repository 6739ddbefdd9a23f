import { expect, it } from 'vitest';
import { ENGLISH } from '../english/english.ts';
import { GERMAN } from '../german/german.ts';
import { say } from './say.ts';

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
