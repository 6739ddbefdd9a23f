/** What is wrong with the file of a practice log, in English. */
import type { LogFact } from '@shedbook/coach';
import type { ExpectedFact } from '@shedbook/core';
import { sentences } from '../../facts/sentences.ts';

/** Clauses for practice logs. */
export const log = sentences<Exclude<LogFact, ExpectedFact>>()({
  'a-moment': 'a moment such as 2026-11-25T18:30:00+01:00',
  'a-value': 'a value',
  'count-from-one': 'a whole number from 1',
  'file-end': 'the end of the file',
  'key-in-quotes': 'a key in double quotes',
  'an-object': 'an object',
  'newer-program': 'read it with a newer version of this program',
  'object-with': 'an object with {$keys :list type=series}',
  'amount-from': 'an amount from {$least :number} to {$most :number useGrouping=never}',
  'tempo-from': 'a tempo from {$least :number} to {$most :number useGrouping=never}',
  'seconds-from': 'seconds from {$least :number} to {$most :number useGrouping=never}',
  'key-twice': 'the key {$key} twice',
  characters: '{$characters :list type=or}',
  'levels-at-most': 'at most {$levels :integer} levels',
});
