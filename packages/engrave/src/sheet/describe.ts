/**
 * A pattern in words, by its counts, for people who listen to a page.
 * For example: describeBars(parts, words, 0, 1) // 'Snare: 1, 1 let, 3 (accent).'
 */
import {
  type BarPart,
  barSigns,
  countSyllable,
  type Exercise,
  endOfRepeat,
  formatStretch,
  type Mark,
  type Strike,
  type Subdivision,
  strikeOf,
  struckSlots,
  type Voice,
} from '@shedbook/core';
import { type PrintedPart, partsOfBar } from './parts.ts';
import type { Manner, SheetWords } from './sheet-words.ts';

/** The count under a slot: its number on the beat, its syllable after it. */
export function countUnder(words: SheetWords, beat: number, slot: number, slots: Subdivision): string {
  const syllable = countSyllable(slot, slots);
  return syllable === null ? `${beat + 1}` : words.syllables[syllable];
}

/** A count as it is said: `1`, `1 let`, `2 &`. */
function spokenCount(words: SheetWords, beat: number, slot: number, slots: Subdivision): string {
  const under = countUnder(words, beat, slot, slots);
  return slot === 0 ? under : `${beat + 1} ${under}`;
}

function manner({ ghost, articulation, accent }: Strike, words: SheetWords): string {
  const kinds: readonly (Manner | null)[] = [
    ghost ? 'ghost' : null,
    articulation === 'normal' ? null : articulation,
    accent ? 'accent' : null,
  ];
  const told = kinds.flatMap((kind) => (kind ? [words.manner[kind]] : []));
  return told.length === 0 ? '' : ` (${told.join(', ')})`;
}

function describePart(part: BarPart, words: SheetWords, told: Map<Voice, string[]>): void {
  part.cells.forEach((cell, beat) => {
    for (const slot of struckSlots(cell)) {
      const strike = strikeOf(part.voice, cell.marks[slot] as Mark);
      if (!strike) continue;
      const count = spokenCount(words, beat, slot, cell.marks.length as Subdivision) + manner(strike, words);
      told.set(strike.voice, [...(told.get(strike.voice) ?? []), count]);
    }
  });
}

function describeBar(parts: readonly BarPart[], words: SheetWords): string {
  const told = new Map<Voice, string[]>();
  for (const part of parts) describePart(part, words, told);
  if (told.size === 0) return words.nothingPlayed;
  return [...told]
    .map(([voice, counts]) => {
      const name = words.voices[voice];
      return `${name.charAt(0).toUpperCase()}${name.slice(1)}: ${counts.join(', ')}.`;
    })
    .join(' ');
}

/** The bars from `from` (from 0) up to `to` in words, each with its number where there are several. */
export function describeBars(
  parts: readonly PrintedPart[],
  words: SheetWords,
  from: number,
  to: number,
): string {
  const bars = Array.from({ length: to - from }, (_, index) => from + index);
  const named = bars.map((bar) => describeBar(partsOfBar(parts, bar), words));
  return named.length === 1 && from === 0
    ? (named[0] as string)
    : named.map((text, index) => words.bar({ bar: from + index + 1, text })).join(' ');
}

/** The repeats that begin with bar `from` (from 0) or after it, in words, with a space before them. */
export function describeRepeats(exercise: Exercise, words: SheetWords, from: number): string {
  const told = (exercise.repeats ?? []).flatMap((repeat) => {
    if (endOfRepeat(repeat) <= from) return [];
    const endings = repeat.endings.map((ending) => {
      const times = barSigns(exercise, ending.from).ending?.times ?? [];
      return words.ending({ times: times.join(', '), bars: formatStretch(ending) });
    });
    return [words.repeated({ bars: formatStretch(repeat), times: repeat.times }), ...endings];
  });
  return told.map((sentence) => ` ${sentence}`).join('');
}
