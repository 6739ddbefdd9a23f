/** Places of strokes, and patterns sieved by them. Bars, beats and slots from 0. */
import {
  type Cell,
  cell,
  type HandedBars,
  type HandedSlot,
  type Mark,
  type Pattern,
  type PlaceFact,
  placeInBar,
} from '@shedbook/core';

/** A place in an exercise. */
export interface Place {
  readonly bar: number;
  readonly beat: number;
  readonly slot: number;
}

/** The place as a text, to compare. */
export function placeKey({ bar, beat, slot }: Place): string {
  return `${bar} ${beat} ${slot}`;
}

/** The place as a fact, with its bar where there are several. */
export function placeFact({ bar, beat, slot }: Place, slots: number, bars: number): PlaceFact {
  const place = placeInBar(beat, slot, slots);
  return bars > 1 ? { fact: 'in-bar', place, bar: bar + 1 } : place;
}

/** A pattern with other marks. */
export function mapMarks(pattern: Pattern, markAt: (mark: Mark, place: Place) => Mark): Pattern {
  const turn = (each: Cell, bar: number, beat: number) =>
    cell(each.marks.map((mark, slot) => markAt(mark, { bar, beat, slot })).join(''));
  return { bars: pattern.bars.map((cells, bar) => cells.map((each, beat) => turn(each, bar, beat))) };
}

/** Slots with others in their places. */
export function mapSlots(
  bars: HandedBars,
  slotAt: (slot: HandedSlot, place: Place) => HandedSlot,
): HandedBars {
  return bars.map((beats, bar) =>
    beats.map((slots, beat) => slots.map((each, slot) => slotAt(each, { bar, beat, slot }))),
  );
}

/** The pattern over so many bars, repeated. */
export function repeatBars(pattern: Pattern, bars: number): Pattern {
  return { bars: Array.from({ length: bars }, (_, bar) => pattern.bars[bar % pattern.bars.length] ?? []) };
}
