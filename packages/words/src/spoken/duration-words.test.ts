import { expect, it } from 'vitest';
import { HEARING } from '../screens/hearing.ts';
import { durationWords } from './duration-words.ts';

it('[WO10] a duration is said to two units, and carries into the next', () => {
  const said = (seconds: number) =>
    [HEARING.en, HEARING.de].map(({ words }) => durationWords(words.durations, seconds));
  // definition: 25 h 24 min are 91,440 s; 47 min 37 s are 2,857 s
  expect(said(91_440)).toEqual(['25 h 24 min', '25 Std. 24 Min.']);
  expect(said(2857)).toEqual(['47 min 37 s', '47 Min. 37 Sek.']);
  expect(said(28)).toEqual(['28 s', '28 Sek.']);
  // definition: 59.6 s are rounded to a minute, 59 min 59.6 s to an hour
  expect(said(59.6)).toEqual(['1 min', '1 Min.']);
  expect(said(3599.6)).toEqual(['1 h', '1 Std.']);
  expect(said(0)).toEqual(['0 s', '0 Sek.']);
});
