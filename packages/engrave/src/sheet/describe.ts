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
  goesOn,
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

function manner({ ghost, articulation, accent }: Strike, words: SheetWords, heldTo: string | null): string {
  const kinds: readonly (Manner | null)[] = [
    ghost ? 'ghost' : null,
    articulation === 'normal' ? null : articulation,
    accent ? 'accent' : null,
  ];
  const held = heldTo === null ? [] : [words.held({ to: heldTo })];
  const told = [...kinds.flatMap((kind) => (kind ? [words.manner[kind]] : [])), ...held];
  return told.length === 0 ? '' : ` (${told.join(', ')})`;
}

/** How far what stands in a slot is held, or null where it is not: to a count, to the bar line or over it. */
function heldTo({ cells, goesOn }: BarPart, beat: number, slot: number, words: SheetWords): string | null {
  const slots = cells.flatMap(({ marks }, on) =>
    marks.map((mark, at) => ({ mark, on, at, of: marks.length })),
  );
  const from = slots.findIndex(({ on, at }) => on === beat && at === slot);
  let end = from + 1;
  while (slots[end]?.mark === '~') end += 1;
  const to = slots[end];
  if (!to && goesOn) return words.heldOver;
  if (end === from + 1 && slots[from]?.mark !== '~') return null;
  if (!to) return words.heldToBarLine;
  return words.heldTo({ place: spokenCount(words, to.on, to.at, to.of as Subdivision) });
}

function tell(told: Map<Voice, string[]>, voice: Voice, text: string): void {
  told.set(voice, [...(told.get(voice) ?? []), text]);
}

function describePart(part: BarPart, words: SheetWords, told: Map<Voice, string[]>): void {
  const into = part.held ? strikeOf(part.voice, part.held) : null;
  const from = into && heldTo(part, 0, 0, words);
  if (into && from) tell(told, into.voice, words.heldInto({ to: from }));
  part.cells.forEach((cell, beat) => {
    for (const slot of struckSlots(cell)) {
      const mark = cell.marks[slot] as Mark;
      const strike = strikeOf(part.voice, mark);
      if (!strike) continue;
      const to = goesOn(part.voice, mark) ? heldTo(part, beat, slot, words) : null;
      const how = manner(strike, words, to);
      tell(told, strike.voice, spokenCount(words, beat, slot, cell.marks.length as Subdivision) + how);
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
