/**
 * What an exercise says of one of its bars: texts over and under it, dynamics and hairpins at their beats.
 *
 * Conventions: millimetres on the bar's tile; bars from 1 as the tile has them.
 */
import type { DynamicSign, Exercise } from '@shedbook/core';
import type { PackBar } from '@shedbook/pack';
import { xAt } from '@shedbook/playing';

/** A printed dynamic, its middle at x. */
interface Mark {
  readonly xMm: number;
  readonly text: string;
}

/** A hairpin from one x to another; how wide it is open at each end, 0 to 1. */
interface Hairpin {
  readonly fromMm: number;
  readonly toMm: number;
  readonly open: readonly [from: number, to: number];
}

/** Everything that is said of a bar. */
export interface Said {
  readonly above: string | null;
  readonly below: string | null;
  readonly marks: readonly Mark[];
  readonly hairpins: readonly Hairpin[];
}

/** Room that a mark takes on either side, for a hairpin to keep off. */
const MARK_MM = 3;

/** As much of the hairpin that begins with a sign as lies in a bar (from 0). */
function hairpinIn(
  start: DynamicSign,
  end: DynamicSign | undefined,
  bar: number,
  tile: PackBar,
): Hairpin | null {
  if (start.hairpin !== 'louder' && start.hairpin !== 'softer') return null;
  if (start.bar > bar || (end && (end.bar < bar || (end.bar === bar && end.beat === 0)))) return null;
  const begins = start.bar === bar;
  const ends = end?.bar === bar;
  const fromMm = begins ? xAt(tile, start.beat, 0) + (start.mark ? MARK_MM : 0) : 0;
  const toMm = ends ? xAt(tile, end.beat, 0) - (end.mark ? MARK_MM : 0) : tile.widthMm;
  const width: readonly [number, number] = [begins ? 0 : 0.5, ends ? 1 : 0.8];
  const open: readonly [number, number] = start.hairpin === 'louder' ? width : [1 - width[0], 1 - width[1]];
  return toMm > fromMm ? { fromMm, toMm, open } : null;
}

/** What is said of a bar; the exercise goes round where the picture has more bars than it. */
export function saidOf(exercise: Exercise | null, tile: PackBar): Said {
  const bars = exercise?.parts[0]?.pattern.bars.length ?? 1;
  const bar = (tile.bar - 1) % bars;
  const { above, below, dynamics = [] } = exercise ?? {};
  return {
    above: above?.[bar] ?? null,
    below: below?.[bar] ?? null,
    marks: dynamics.flatMap((sign) =>
      sign.bar === bar && sign.mark !== null ? [{ xMm: xAt(tile, sign.beat, 0), text: sign.mark }] : [],
    ),
    hairpins: dynamics.flatMap((sign, index) => hairpinIn(sign, dynamics[index + 1], bar, tile) ?? []),
  };
}

/** Whether anything stands under a bar. */
export function hasUnder({ below, marks, hairpins }: Said): boolean {
  return below !== null || marks.length > 0 || hairpins.length > 0;
}
