/** What is wrong with the file of a practice log, in German. */
import type { LogFact } from '@shedbook/coach';
import type { ExpectedFact } from '@shedbook/core';
import { sentences } from '../../facts/sentences.ts';

/** Clauses for practice logs. */
export const log = sentences<Exclude<LogFact, ExpectedFact>>()({
  'a-moment': 'ein Zeitpunkt wie 2026-11-25T18:30:00+01:00',
  'a-value': 'ein Wert',
  'count-from-one': 'eine ganze Zahl ab 1',
  'file-end': 'das Ende der Datei',
  'key-in-quotes': 'ein Schlüssel in Anführungszeichen',
  'an-object': 'ein Objekt',
  'newer-program': 'mit einer neueren Fassung dieses Programms lesen',
  'object-with': 'ein Objekt mit {$keys :list type=series}',
  'amount-from': 'ein Betrag von {$least :number} bis {$most :number useGrouping=never}',
  'tempo-from': 'ein Tempo von {$least :number} bis {$most :number useGrouping=never}',
  'seconds-from': 'Sekunden von {$least :number} bis {$most :number useGrouping=never}',
  'key-twice': 'zweimal der Schlüssel {$key}',
  characters: '{$characters :list type=or}',
  'levels-at-most': 'höchstens {$levels :integer} Ebenen',
});
