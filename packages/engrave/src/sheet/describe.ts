/**
 * A pattern in words, by its counts, for people who listen to a page.
 * For example: describeBars(parts, meter, 0, 1) // 'Snare: 1, 1 let, 3 (accent).'
 */
import {
  type BarPart,
  countSyllable,
  type Mark,
  type Strike,
  type Subdivision,
  strikeOf,
  struckSlots,
  VOICE_FACTS,
} from '@shedbook/core';
import { type PrintedPart, partsOfBar } from './parts.ts';

/** A count as it is said: `1`, `1 let`, `2 &`. */
export function spokenCount(beat: number, slot: number, slots: Subdivision): string {
  const syllable = countSyllable(beat, slot, slots);
  return slot === 0 ? syllable : `${beat + 1} ${syllable}`;
}

function manner(strike: Strike): string {
  const words = [
    strike.ghost ? 'ghost' : '',
    strike.articulation === 'normal' ? '' : strike.articulation,
    strike.accent ? 'accent' : '',
  ].filter(Boolean);
  return words.length === 0 ? '' : ` (${words.join(', ')})`;
}

function describePart(part: BarPart, told: Map<string, string[]>): void {
  part.cells.forEach((cell, beat) => {
    for (const slot of struckSlots(cell)) {
      const strike = strikeOf(part.voice, cell.marks[slot] as Mark);
      if (!strike) continue;
      const { label } = VOICE_FACTS[strike.voice];
      const count = spokenCount(beat, slot, cell.marks.length as Subdivision) + manner(strike);
      told.set(label, [...(told.get(label) ?? []), count]);
    }
  });
}

function describeBar(parts: readonly BarPart[]): string {
  const told = new Map<string, string[]>();
  for (const part of parts) describePart(part, told);
  if (told.size === 0) return 'Nothing is played.';
  return [...told]
    .map(([label, counts]) => `${label.charAt(0).toUpperCase()}${label.slice(1)}: ${counts.join(', ')}.`)
    .join(' ');
}

/** The bars from `from` (from 0) up to `to` in words, each with its number where there are several. */
export function describeBars(parts: readonly PrintedPart[], from: number, to: number): string {
  const bars = Array.from({ length: to - from }, (_, index) => from + index);
  const named = bars.map((bar) => describeBar(partsOfBar(parts, bar)));
  return named.length === 1 && from === 0
    ? (named[0] as string)
    : named.map((text, index) => `Bar ${from + index + 1}. ${text}`).join(' ');
}
