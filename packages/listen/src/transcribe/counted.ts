/**
 * What a meter counts, and which meters are looked for where none is known.
 *
 * Source: common practice: beats of one length are counted, of beats of two and three eighths the eighths are.
 */
import { type Fraction, fraction, isEvenMeter, type Meter, meter, unitsIn } from '@shedbook/core';
import type { Limits } from './pulse.ts';

/** How a bar is counted. */
export interface Counted {
  /** How many counts a bar has: its beats, or its smallest units where beats are not of one length. */
  readonly inBar: number;
  /** Whether the beat is dotted: three of its parts are counted. */
  readonly isDotted: boolean;
  /** How many counts each beat has, where they are not of one length; left out where each count is a beat. */
  readonly groups?: readonly number[];
  /** The meter. */
  readonly meter: Meter;
}

/** Meters that count alike, and how fast their counts may come. */
export interface Family {
  readonly meters: readonly Meter[];
  readonly limits: Limits;
}

/** Beats a minute that are looked for, and eighths where those are counted. */
const BEATS: Limits = { leastBpm: 40, mostBpm: 270 };
const EIGHTHS: Limits = { leastBpm: 150, mostBpm: 420 };

/** What is looked for where no meter is known. */
export const FAMILIES: readonly Family[] = [
  { meters: ['4/4', '3/4', '5/4', '2/4'].map(meter), limits: BEATS },
  { meters: ['6/8', '12/8'].map(meter), limits: BEATS },
  { meters: ['2+2+3/8', '2+3+2/8', '3+2+2/8'].map(meter), limits: EIGHTHS },
];

/** The family of a meter that is known. */
export function familyOf(known: Meter): Family {
  return { meters: [known], limits: isEvenMeter(known) ? BEATS : EIGHTHS };
}

/** The length of what a meter counts, in whole notes. */
export function countLength(of: Meter): Fraction {
  return isEvenMeter(of) ? of.beats[0]! : fraction(1, of.lower);
}

/** How a bar of a meter is counted. */
export function countedAs(of: Meter): Counted {
  const isDotted = of.compound;
  if (isEvenMeter(of)) return { inBar: of.beats.length, isDotted, meter: of };
  return { inBar: of.upper, isDotted, groups: of.beats.map((beat) => unitsIn(of, beat)), meter: of };
}

/** The counts on which the beats of a bar begin, from 0. */
export function beatsIn({ inBar, groups }: Counted): readonly number[] {
  if (!groups) return Array.from({ length: inBar }, (_, beat) => beat);
  return groups.map((_, index) => groups.slice(0, index).reduce((sum, size) => sum + size, 0));
}
