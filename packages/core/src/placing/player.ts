/**
 * What a take tells of its player: how far strokes stray, and which subdivisions are used.
 *
 * Conventions: spreads and tolerances are fractions of the beat; habits are costs in nats.
 * Source: a normal error, its spread by the median deviation; the limits are ours.
 */

import { PLAYED_SUBDIVISIONS, type Subdivision } from '../rhythm/cell.ts';
import type { ChosenBeat, Grid, Player } from './choose-beat.ts';

/** Spread of a player before anything is known, and the least that is believed, as fractions of the beat. */
const SPREAD = { first: 0.03, least: 0.01 } as const;

/**
 * Furthest that a stroke may lie from its slot, as a fraction of the beat: never less than a little over the 1/15 by
 * which a swing of 1.5:1 misses the last triplet, never more than half of a sixteenth, and in between what the
 * player's own spread makes likely.
 */
const TOLERANCE_BEATS = { least: 0.07, most: 0.125 } as const;

/**
 * Standard deviations in a median deviation of a normal distribution: one over its upper quartile.
 * @source P. J. Rousseeuw and C. Croux, "Alternatives to the Median Absolute Deviation", JASA 88, 1993
 */
const DEVIATIONS = 1.4826;

/** How many spreads away a stroke may still be meant: beyond, one in two thousand would be. */
const LIKELY_SPREADS = 3.5;

/** Cost of eighths or sixteenths where swing is known and triplets are expected. */
const EVEN_IN_SWING_COSTS = 1;

/** A player of whom nothing is known but the feel. */
export function stranger(grid: Grid): Player {
  const even = (slots: Subdivision) => (slots === 2 || slots === 4 ? EVEN_IN_SWING_COSTS : 0);
  return {
    spread: SPREAD.first,
    toleranceBeats: grid.toleranceBeats ?? TOLERANCE_BEATS.least,
    habit: grid.swing?.of === 'eighths' ? even : () => 0,
  };
}

/** The error in the middle; 0 of none. */
function middleOf(errors: readonly number[]): number {
  return errors.toSorted((a, b) => a - b)[errors.length >> 1] ?? 0;
}

/** The player of a take after a pass over it: spread by the median error, habits by counted beats. */
export function playerOf(beats: readonly ChosenBeat[], grid: Grid, before: Player): Player {
  const errors = beats.flatMap(({ choice }) => choice.errors);
  const spread = Math.max(SPREAD.least, DEVIATIONS * middleOf(errors));
  const likely = Math.max(TOLERANCE_BEATS.least, LIKELY_SPREADS * spread);
  const divided = beats.filter(({ choice }) => choice.slots > 1);
  const count = (slots: Subdivision) => divided.filter(({ choice }) => choice.slots === slots).length;
  const share = new Map<Subdivision, number>(
    PLAYED_SUBDIVISIONS.map((slots) => [slots, (count(slots) + 1) / (divided.length + 4)]),
  );
  return {
    spread,
    toleranceBeats: grid.toleranceBeats ?? Math.min(TOLERANCE_BEATS.most, likely),
    habit: (slots) => before.habit(slots) + (slots === 1 ? 0 : -Math.log(share.get(slots) ?? 1)),
  };
}
