/** Places in a bar as people say them. */
import { countSyllable, isSubdivision } from '@shedbook/core';

/** A place in words: `2`, `the let of 2`, `the & of 4`. */
export function placeWords(beat: number, slot: number, slots: number): string {
  const syllable = isSubdivision(slots) ? countSyllable(beat, slot, slots) : `slot ${slot + 1}`;
  return slot === 0 ? `${beat + 1}` : `the ${syllable} of ${beat + 1}`;
}
