/** The slots of a line in order, and going from one to the next. Bars, beats and slots count from 0. */
import type { Pattern } from '@shedbook/core';
import type { SlotPlace } from '../edit/strokes.ts';

/** Every slot, in order. */
export function slotsOf(pattern: Pattern): readonly SlotPlace[] {
  return pattern.bars.flatMap((bars, bar) =>
    bars.flatMap((each, beat) => each.marks.map((_, slot) => ({ bar, beat, slot }))),
  );
}

/** Whether two places are the same. */
export function isSame(a: SlotPlace | null, b: SlotPlace | null): boolean {
  return a !== null && b !== null && a.bar === b.bar && a.beat === b.beat && a.slot === b.slot;
}

/** The place `by` slots further on, stopping at the ends. */
export function stepFrom(pattern: Pattern, place: SlotPlace, by: number): SlotPlace {
  const all = slotsOf(pattern);
  const index = all.findIndex((each) => isSame(each, place));
  const target = Math.min(all.length - 1, Math.max(0, index + by));
  return all[target] ?? place;
}

/** The slot of another pattern at (or before) the same place in the bar; its last bar where it is shorter. */
export function samePlaceIn(pattern: Pattern, place: SlotPlace, slotsThere: number): SlotPlace {
  const bar = Math.min(place.bar, pattern.bars.length - 1);
  const cells = pattern.bars[bar] ?? [];
  const beat = Math.min(place.beat, cells.length - 1);
  const slots = cells[beat]?.marks.length ?? 1;
  return { bar, beat, slot: Math.min(slots - 1, Math.floor((place.slot * slots) / slotsThere)) };
}
