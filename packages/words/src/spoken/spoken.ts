/** A pattern as it is counted aloud: what a screen reader says and what stands under a slot. */
import {
  type Cell,
  countSyllable,
  isStruck,
  type Mark,
  type Pattern,
  type Subdivision,
  type Syllable,
} from '@shedbook/core';

/** What is counted inside a beat, in a language. */
export interface CountWords {
  readonly syllables: Readonly<Record<Syllable, string>>;
}

/** The count under a slot: its number on the beat, its syllable after it. */
export function countUnder(words: CountWords, beat: number, slot: number, slots: number): string {
  const syllable = countSyllable(slot, slots as Subdivision);
  return syllable === null ? `${beat + 1}` : words.syllables[syllable];
}

/**
 * The full count of a slot, for the ear.
 * For example: countOf(words.counts, 1, 2, 3) // '2 let'
 */
export function countOf(words: CountWords, beat: number, slot: number, slots: number): string {
  return slot === 0 ? `${beat + 1}` : `${beat + 1} ${countUnder(words, beat, slot, slots)}`;
}

/** Says one mark of a stroke; nothing for a plain one. */
export type SayMark = (mark: Mark) => string;

/** A stroke as it is said. */
export interface SaidStroke {
  readonly count: string;
  /** How it is struck; nothing for a plain one. */
  readonly how: string;
}

function sayCell(
  words: CountWords,
  each: Cell,
  beat: number,
  say: SayMark,
  saysHeld = false,
): readonly SaidStroke[] {
  const isSaid = (mark: Mark, slot: number) =>
    isStruck(mark) || (saysHeld && mark === '~' && each.marks[slot - 1] !== '~');
  return each.marks.flatMap((mark, slot) =>
    isSaid(mark, slot) ? [{ count: countOf(words, beat, slot, each.marks.length), how: say(mark) }] : [],
  );
}

/** The strokes of each bar of a pattern. */
export function sayStrokes(
  words: CountWords,
  pattern: Pattern,
  say: SayMark,
): readonly (readonly SaidStroke[])[] {
  return pattern.bars.map((bar) => bar.flatMap((each, beat) => sayCell(words, each, beat, say)));
}

/** The bars of a pattern as counts, with where something is held; an empty text for a silent bar. */
export function sayPattern(words: CountWords, pattern: Pattern, say: SayMark): readonly string[] {
  const named = ({ count, how }: SaidStroke) => (how === '' ? count : `${count} ${how}`);
  const sayBar = (bar: readonly Cell[]) => bar.flatMap((each, beat) => sayCell(words, each, beat, say, true));
  return pattern.bars.map((bar) => sayBar(bar).map(named).join(', '));
}
