/** Values and words of files, in English: each completes "found …" or "expected …", or is a repair. */
import type { ValueFact, WordFact } from '@shedbook/core';
import { sentences } from '../../facts/sentences.ts';

/** Clauses for values and words. */
export const values = sentences<ValueFact | WordFact>()({
  nothing: 'nothing',
  'empty-text': 'an empty text',
  'empty-list': 'an empty list',
  'empty-map': 'an empty map',
  list: 'a list',
  map: 'a map',
  quoted: '"{$text}"',
  literal: '{$text}',
  'unknown-key': 'unknown key "{$key}"',
  'each-key-once': 'each key once',
  'one-of': 'one of {$words :list type=series}',
  'did-you-mean': 'did you mean "{$word}"?',
  version: 'version {$version :number useGrouping=never}',
});
