/** Patterns read out by their counts, in English. */

import type { Syllable } from '@shedbook/core';

/** What is counted inside a beat. */
export const syllables: Readonly<Record<Syllable, string>> = {
  '&': '&',
  trip: 'trip',
  let: 'let',
  e: 'e',
  a: 'a',
  ta: 'ta',
  di: 'di',
  gi: 'gi',
  na: 'na',
  tom: 'tom',
  ka: 'ka',
  mi: 'mi',
  ki: 'ki',
};

/** What is said besides the counts themselves. */
export const counts = {
  syllables,
  silent: 'silent',
  bar: 'bar {$n :integer}',
} as const;
