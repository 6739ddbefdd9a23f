/** Values and words of files, in German. */
import type { ValueFact, WordFact } from '@shedbook/core';
import { sentences } from '../../facts/sentences.ts';

/** Clauses for values and words. */
export const values = sentences<ValueFact | WordFact>()({
  nothing: 'nichts',
  'empty-text': 'ein leerer Text',
  'empty-list': 'eine leere Liste',
  'empty-map': 'eine leere Zuordnung',
  list: 'eine Liste',
  map: 'eine Zuordnung',
  quoted: '„{$text}“',
  literal: '{$text}',
  'unknown-key': 'unbekannter Schlüssel „{$key}“',
  'each-key-once': 'jeder Schlüssel einmal',
  'one-of': 'eines von {$words :list type=series}',
  'did-you-mean': 'ist „{$word}“ gemeint?',
  version: 'Version {$version :number useGrouping=never}',
});
