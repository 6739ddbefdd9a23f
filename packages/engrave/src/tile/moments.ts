/**
 * Where a moment of a bar stands on a tile. Notes are spaced in proportion to time, so between and beyond what is
 * written the same scale goes on.
 *
 * Conventions: `at` in whole notes from the bar line, `x` in millimetres of a head's middle.
 */
import { type Fraction, type NotatedBar, toNumber } from '@shedbook/core';

/** A moment whose place is known. Bars count as in the tile. */
export interface Anchor {
  readonly bar: number;
  /** Whole notes from the bar line. */
  readonly at: number;
  /** Middle of the head, in mm. */
  readonly x: number;
}

interface Bars {
  readonly bars: readonly NotatedBar[];
  readonly firstBar?: number;
  readonly staffSpaceMm: number;
}

/** Moments closer than this, in whole notes, are one. */
const SAME = 1e-6;

/** From a bar line to the middle of the first head, in staff spaces. */
const FIRST_HEAD_SPACES = 2;

/** Millimetres a whole note takes, from the two anchors of one bar that lie furthest apart; null with none. */
function scaleOf(anchors: readonly Anchor[]): number | null {
  let best: { apart: number; scale: number } | null = null;
  for (const first of anchors) {
    for (const second of anchors) {
      const apart = second.at - first.at;
      if (first.bar !== second.bar || apart < SAME || (best && apart <= best.apart)) continue;
      best = { apart, scale: (second.x - first.x) / apart };
    }
  }
  return best?.scale ?? null;
}

/** An anchor for a bar in which nothing has a place of its own. */
function anchorAtBarLine(of: Bars, index: number, barLines: readonly number[]): Anchor {
  const left = barLines[index] ?? 0;
  return { bar: index, at: 0, x: left + FIRST_HEAD_SPACES * of.staffSpaceMm };
}

/**
 * The place of every moment of a tile.
 * @param barLines x of the bar lines, the opening one first
 */
export function momentsOf(
  of: Bars,
  anchors: readonly Anchor[],
  barLines: readonly number[],
): (bar: number, start: Fraction) => number {
  const { bars, firstBar = 1, staffSpaceMm } = of;
  const lengths = bars.map((bar) => toNumber(bar.meter.bar));
  const width = (barLines.at(-1) ?? 0) - (barLines[0] ?? 0);
  const total = lengths.reduce((sum, length) => sum + length, 0);
  const scale =
    scaleOf(anchors) ?? Math.max(0, width - bars.length * FIRST_HEAD_SPACES * staffSpaceMm) / total;
  const byBar = bars.map((_, index) => {
    const own = anchors.filter((anchor) => anchor.bar === firstBar + index).sort((a, b) => a.at - b.at);
    return own.length > 0 ? own : [anchorAtBarLine(of, index, barLines)];
  });
  return (bar, start) => {
    const own = byBar[bar - firstBar] ?? [];
    const at = toNumber(start);
    const before = own.findLast((anchor) => anchor.at <= at + SAME);
    const after = own.find((anchor) => anchor.at >= at - SAME);
    if (before && after && after.at - before.at > SAME) {
      return before.x + ((at - before.at) / (after.at - before.at)) * (after.x - before.x);
    }
    const near = (before ?? after) as Anchor;
    return near.x + (at - near.at) * scale;
  };
}
