/** Breaking a bar into rows so that a finger can hit every slot. */
import type { Cell, Meter } from '@shedbook/core';
import { beatEdges } from '../notation/layout.ts';

/** Beats that stand in one row, and the part of the drawing that shows them. */
export interface Row {
  readonly fromBeat: number;
  readonly toBeat: number;
  /** Left end in the drawing, in units (ten are one staff space). */
  readonly left: number;
  /** Right end in the drawing, in units (ten are one staff space). */
  readonly right: number;
}

/** Least width of a slot in CSS pixels. Source: WCAG 2.2, 2.5.8 Target Size (Minimum). */
export const LEAST_SLOT_PX = 24;

function narrowestSlot(cells: readonly Cell[], edges: readonly number[]): number {
  const widths = cells.map((cell, beat) => ((edges[beat + 1] ?? 0) - (edges[beat] ?? 0)) / cell.marks.length);
  return Math.min(...widths);
}

/** Units after the last beat of a row that goes on in the next: what belongs to its last head stands out so far. */
const BREAK_TAIL = 8;

/** So many beats in a row that rows are as even as they can be with no more than `most` in one. */
export function evenly(beats: number, most: number): number {
  return Math.ceil(beats / Math.ceil(beats / most));
}

/** How many bars stand beside each other: as many as leave each of them in one row. */
export function barsAbreast(
  bars: readonly (readonly Cell[])[],
  meter: Meter,
  widthPx: number,
  tail: number,
): number {
  const fits = (abreast: number) =>
    bars.every((cells) => rowsOf(cells, meter, widthPx / abreast, tail).length === 1);
  let abreast = Math.max(1, bars.length);
  while (abreast > 1 && !fits(abreast)) abreast -= 1;
  return abreast;
}

/** Rows of a bar for a width; one row while slots are wide enough. */
export function rowsOf(cells: readonly Cell[], meter: Meter, widthPx: number, tail: number): readonly Row[] {
  const edges = beatEdges(meter);
  const end = edges.at(-1) ?? 0;
  const beats = cells.length;
  const widestRow = (perRow: number) =>
    Math.max(...cells.map((_, beat) => (edges[Math.min(beats, beat + perRow)] ?? end) - (edges[beat] ?? 0)));
  const fits = (perRow: number) => {
    const out = perRow < beats ? Math.max(tail, BREAK_TAIL) : tail;
    return (widthPx / (widestRow(perRow) + out)) * narrowestSlot(cells, edges) >= LEAST_SLOT_PX;
  };
  let most = beats;
  while (most > 1 && widthPx > 0 && !fits(most)) most -= 1;
  const beatsPerRow = evenly(beats, most);
  return Array.from({ length: Math.ceil(beats / beatsPerRow) }, (_, row) => {
    const fromBeat = row * beatsPerRow;
    const toBeat = Math.min(beats, fromBeat + beatsPerRow);
    return {
      fromBeat,
      toBeat,
      left: edges[fromBeat] ?? 0,
      right: (edges[toBeat] ?? end) + (toBeat === beats ? tail : BREAK_TAIL),
    };
  });
}
