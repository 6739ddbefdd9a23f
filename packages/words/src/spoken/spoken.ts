/** A pattern as it is counted aloud: what a screen reader says and what stands under a slot. */
import {
  type Cell,
  countSyllable,
  isStruck,
  type Mark,
  type Pattern,
  type Subdivision,
} from '@shedbook/core';

/** The count under a slot: its number on the beat, its syllable after it. */
export function countUnder(beat: number, slot: number, slots: number): string {
  return countSyllable(beat, slot, slots as Subdivision);
}

/**
 * The full count of a slot, for the ear.
 * @example countOf(1, 2, 3) // '2 let'
 */
export function countOf(beat: number, slot: number, slots: number): string {
  return slot === 0 ? `${beat + 1}` : `${beat + 1} ${countUnder(beat, slot, slots)}`;
}

/** Says one mark of a stroke; nothing for a plain one. */
export type SayMark = (mark: Mark) => string;

function sayCell(each: Cell, beat: number, say: SayMark): readonly string[] {
  return each.marks.flatMap((mark, slot) => {
    if (!isStruck(mark)) return [];
    const how = say(mark);
    const count = countOf(beat, slot, each.marks.length);
    return [how === '' ? count : `${count} ${how}`];
  });
}

/** The bars of a pattern as counts; an empty text for a silent bar. */
export function sayPattern(pattern: Pattern, say: SayMark): readonly string[] {
  return pattern.bars.map((bar) => bar.flatMap((each, beat) => sayCell(each, beat, say)).join(', '));
}
