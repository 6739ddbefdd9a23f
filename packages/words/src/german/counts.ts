/** Patterns read out by their counts, in German. */
import type { Syllable } from '@shedbook/core';
import type * as english from '../english/counts.ts';
import { translation } from '../message/translated.ts';

/**
 * What is counted inside a beat: „1 +“, „1 tri ole“, „1 e + de“.
 * Source: common practice; from memory, others count sixteenths „1 e + e“, which cannot tell the second from the last.
 */
export const syllables: Readonly<Record<Syllable, string>> = {
  '&': '+',
  trip: 'tri',
  let: 'ole',
  e: 'e',
  a: 'de',
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
export const counts = translation<typeof english.counts>()({
  syllables,
  silent: 'still',
  bar: 'Takt {$n :integer}',
});
