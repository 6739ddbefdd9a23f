/** Places in a bar, in German: each as it stands after "auf". */
import type { PlaceFact } from '@shedbook/core';
import { sentences } from '../../facts/sentences.ts';

/** Clauses for places. */
export const places = sentences<PlaceFact>()({
  beat: 'der {$beat :integer}',
  syllable: 'dem „{$syllable :syllable}“ der {$beat :integer}',
  slot: 'Stelle {$slot :integer} der {$beat :integer}',
  'in-bar': '{$place :say} in Takt {$bar :integer}',
});
