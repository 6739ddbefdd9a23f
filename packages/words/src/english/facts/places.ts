/** Places in a bar, in English: each as it stands after "on". */
import type { PlaceFact } from '@shedbook/core';
import { sentences } from '../../facts/sentences.ts';

/** Clauses for places. */
export const places = sentences<PlaceFact>()({
  beat: '{$beat :integer}',
  syllable: 'the {$syllable :syllable} of {$beat :integer}',
  slot: 'place {$slot :integer} of {$beat :integer}',
  'in-bar': '{$place :say} in bar {$bar :integer}',
});
