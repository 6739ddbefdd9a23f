/**
 * The feel of a take that nobody wrote down: where the off-beats lie.
 *
 * Conventions: phases are places in a beat, 0 to 1; a ratio is long : short.
 */
import { type Feel, NAMED_FEELS, phaseToSwingRatio } from '@shedbook/core';
import { median } from '@shedbook/signal';
import { type PlacedVoice, phaseOf } from './phase.ts';

/** Off-beats lie in this part of a beat, and even ones this near its middle. */
const OFF_BEAT = { from: 0.4, to: 0.84 } as const;
const EVEN = 0.06;
/** A ratio this near 2 is the triplet's. */
const TRIPLET = 0.4;
/** Fewer off-beats tell nothing. */
const FEWEST = 4;

/** Phases of strokes that are the only one of their voice between two beats. */
function offBeats(placed: readonly PlacedVoice[]): readonly number[] {
  const inside = new Map<string, number[]>();
  for (const { stroke, at } of placed) {
    const phase = phaseOf({ at });
    if (phase < 0.1 || phase > 0.9) continue;
    const key = `${stroke.voice} ${Math.floor(at)}`;
    inside.set(key, [...(inside.get(key) ?? []), phase]);
  }
  return [...inside.values()].flatMap((phases) =>
    phases.length === 1 && phases[0]! > OFF_BEAT.from && phases[0]! < OFF_BEAT.to ? phases : [],
  );
}

/** Whether strokes lie on the quarters of a beat, as no swing has them: its second, or its last after its middle. */
function hasQuarters(placed: readonly PlacedVoice[]): boolean {
  const isNear = (at: number, phase: number) => Math.abs(phaseOf({ at }) - phase) < 0.05;
  const beatOf = ({ stroke, at }: PlacedVoice) => `${stroke.voice} ${Math.floor(at)}`;
  const middles = new Set(placed.filter(({ at }) => isNear(at, 0.5)).map(beatOf));
  const near = placed.filter(
    (one) => isNear(one.at, 0.25) || (isNear(one.at, 0.75) && middles.has(beatOf(one))),
  );
  return near.length > placed.length * 0.05;
}

/** The feel: even where off-beats lie in the middle of the beat or there are too few, else their ratio. */
export function feelOf(placed: readonly PlacedVoice[]): Feel {
  const phases = offBeats(placed);
  const middle = median(phases);
  const isEven = phases.filter((phase) => Math.abs(phase - 0.5) < EVEN).length > phases.length / 2;
  if (phases.length < FEWEST || isEven || hasQuarters(placed)) return NAMED_FEELS.even;
  const ratio = phaseToSwingRatio(middle);
  if (Math.abs(ratio - 2) < TRIPLET) return NAMED_FEELS.triplet;
  return { kind: 'ratio', ratio: Math.round(Math.max(1, Math.min(4, ratio)) * 10) / 10, of: 'eighths' };
}
