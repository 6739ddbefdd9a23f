/**
 * Fitting an exercise to the wall: in how many rows it stands largest.
 *
 * Conventions: units of the drawing (ten are one staff space); a scale is CSS pixels a unit; beats and bars
 * count from 0.
 */
import type { Meter, Pattern } from '@shedbook/core';
import { evenly } from '../line/rows.ts';
import { BAR_TAIL, beatEdges } from '../notation/layout.ts';

/** Where a row begins and ends: beats of one bar, or whole bars. */
export interface RoomRow {
  readonly fromBar: number;
  readonly toBar: number;
  readonly fromBeat: number;
  readonly toBeat: number;
}

/** Rows, and how large they are drawn. */
export interface RoomFit {
  readonly rows: readonly RoomRow[];
  /** CSS pixels a unit. */
  readonly scale: number;
  /** Width of every row's drawing in units, the longest row's. */
  readonly width: number;
}

/** What is to be fitted, and into what. */
export interface FitRequest {
  readonly bars: number;
  readonly meter: Meter;
  /** Width of a quarter note, in tenths of a staff space. */
  readonly quarterWidth: number;
  /** Height of a row in units. */
  readonly rowHeight: number;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Units that a final bar line stands out on the right. */
export const ROOM_TAIL = 8;

/** Least width of a slot in units: a head and air. */
const SLOT_WIDTH = 22;

/** Least width where a ghost note is the last before the bar line: its parenthesis stands before the repeat sign's dots. */
const LAST_GHOST_WIDTH = 26;

/** Narrowest quarter note: a head, a stem with its flag, and air. */
const LEAST_QUARTER = 56;

/** Units that a quarter note takes when its slots stand as close as can be read: the larger it can be drawn. */
export function closeQuarter(patterns: readonly Pattern[], meter: Meter): number {
  const edges = beatEdges(meter, 1);
  const needed = patterns.flatMap((pattern) =>
    pattern.bars.flatMap((bar) =>
      bar.map((cell, beat) => {
        const quarters = (edges[beat + 1] ?? 1) - (edges[beat] ?? 0);
        const endsOnGhost = beat === bar.length - 1 && cell.marks.at(-1) === 'g';
        return (cell.marks.length * (endsOnGhost ? LAST_GHOST_WIDTH : SLOT_WIDTH)) / quarters;
      }),
    ),
  );
  return Math.max(LEAST_QUARTER, ...needed);
}

/** A bar in rows of no more than so many beats, as even as can be. */
function brokenBar(bar: number, beats: number, most: number): readonly RoomRow[] {
  const perRow = evenly(beats, most);
  return Array.from({ length: Math.ceil(beats / perRow) }, (_, row): RoomRow => {
    const fromBeat = row * perRow;
    return { fromBar: bar, toBar: bar + 1, fromBeat, toBeat: Math.min(beats, fromBeat + perRow) };
  });
}

/** Ways to break: a bar in parts of two beats or more, or so many whole bars in a row. */
function waysToBreak(bars: number, beats: number): readonly (readonly RoomRow[])[] {
  const parts = Array.from({ length: Math.max(0, beats - 2) }, (_, i) => beats - 1 - i);
  const broken = parts.map((most) =>
    Array.from({ length: bars }, (_, bar) => bar).flatMap((bar) => brokenBar(bar, beats, most)),
  );
  const whole = Array.from({ length: bars }, (_, i) => i + 1).map((perRow) =>
    Array.from({ length: Math.ceil(bars / perRow) }, (_, row): RoomRow => {
      const fromBar = row * perRow;
      return { fromBar, toBar: Math.min(bars, fromBar + perRow), fromBeat: 0, toBeat: beats };
    }),
  );
  return [...whole, ...broken];
}

/** Width of a row in units, with what stands out on its right: a final bar line, or what belongs to its last head. */
export function rowWidth(row: RoomRow, edges: readonly number[]): number {
  const bars = row.toBar - row.fromBar;
  const last = edges.at(-1) ?? 0;
  const bar = (edges[row.toBeat] ?? last) - (edges[row.fromBeat] ?? 0);
  const tails = row.toBeat === edges.length - 1 ? bars * BAR_TAIL + ROOM_TAIL : BAR_TAIL;
  return bars * bar + tails;
}

/** The way in which it stands largest; of equals the one with fewer rows. */
export function fitRows({ bars, meter, quarterWidth, rowHeight, widthPx, heightPx }: FitRequest): RoomFit {
  const edges = beatEdges(meter, quarterWidth);
  const fits = waysToBreak(bars, meter.beats.length).map((rows): RoomFit => {
    const width = Math.max(...rows.map((row) => rowWidth(row, edges)));
    return { rows, width, scale: Math.min(widthPx / width, heightPx / (rows.length * rowHeight)) };
  });
  return fits.reduce((best, each) => {
    const better = each.scale > best.scale + 1e-9;
    const shorter = Math.abs(each.scale - best.scale) <= 1e-9 && each.rows.length < best.rows.length;
    return better || shorter ? each : best;
  });
}
