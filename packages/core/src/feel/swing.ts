/**
 * Where a written slot falls in a beat that is played with a swing ratio.
 *
 * Conventions: a phase is a place in a beat, 0 at its start, below 1. A ratio is long : short.
 * Sources: the identity off-beat = r/(1 + r) is the definition of the beat–upbeat ratio (F. Benadon 2006,
 * Ethnomusicology 50(1)). The tempo law is a least-squares line through the ride-cymbal ratios of 289
 * recordings of jazz trios, 103–299 quarter notes a minute (Cheston et al. 2024, TISMIR, doi
 * 10.5334/tismir.186, data of the Cambridge Jazz Trio Database): ratio = 3.579 − 0.00788·bpm, r = −0.746.
 * Differs from the source: outside 100–300 bpm the ratio of the nearer end is held, since nothing was measured
 * there.
 */

import type { Fraction } from '../rhythm/fraction.ts';
import { toNumber } from '../rhythm/fraction.ts';
import { type Bpm, Seconds } from '../units.ts';
import type { Feel, SwingRatio } from './feel.ts';

/** Quarter notes a minute between which the tempo law was measured. */
const MEASURED_BPM = { from: 100, to: 300 } as const;

/**
 * The swing ratio that drummers use on the ride cymbal at a tempo in quarter notes a minute.
 * @example rideSwingRatio(200) // 2.003
 */
export function rideSwingRatio(bpm: number): number {
  const held = Math.min(MEASURED_BPM.to, Math.max(MEASURED_BPM.from, bpm));
  return 3.579 - 0.00788 * held;
}

/** Phase of the off-beat for a ratio: 1 → 1/2, 2 → 2/3, 3 → 3/4. */
export function offBeatPhase(ratio: number): number {
  return ratio / (1 + ratio);
}

/** The ratio that puts the off-beat at a phase. */
export function phaseToSwingRatio(phase: number): number {
  return phase / (1 - phase);
}

/** The swing in force at a tempo in quarter notes a minute, or null for an even feel. */
export function swingAt(feel: Feel, bpm: number): SwingRatio | null {
  switch (feel.kind) {
    case 'even':
      return null;
    case 'ratio':
      return feel;
    case 'by tempo':
      return { kind: 'ratio', ratio: rideSwingRatio(bpm), of: 'eighths' };
    default:
      return feel satisfies never;
  }
}

/** A phase once `pivot` is moved to `target` and both sides are stretched: piecewise linear, so order is kept. */
export function bentPhase(phase: number, pivot: number, target: number): number {
  return phase <= pivot ? (phase / pivot) * target : target + ((phase - pivot) / (1 - pivot)) * (1 - target);
}

/** The written phase that swing moves: the last triplet, the second eighth; none in fives, sevens and duplets of a dotted beat. */
function writtenOffBeat(slots: number, dotted: boolean): number | null {
  if (slots % 3 === 0) return 2 / 3;
  return dotted || slots % 2 !== 0 ? null : 1 / 2;
}

/**
 * Performed phase of a written slot.
 * @param slot from 0, of `slots` equal parts of the beat
 * @param dotted whether the beat is a dotted value
 * @param swing the ratio in force, or null for as written
 * @returns the phase in [0, 1); written triplets at 2:1 and everything without swing are exact.
 */
export function performedPhase(
  slot: number,
  slots: number,
  dotted: boolean,
  swing: SwingRatio | null,
): number {
  const phase = slot / slots;
  if (!swing) return phase;
  const target = offBeatPhase(swing.ratio);
  if (swing.of === 'eighths') {
    const pivot = writtenOffBeat(slots, dotted);
    return pivot === null ? phase : bentPhase(phase, pivot, target);
  }
  if (dotted || slots % 2 !== 0 || slots % 3 === 0) return phase;
  const half = phase < 0.5 ? 0 : 0.5;
  return half + bentPhase((phase - half) * 2, 0.5, target) / 2;
}

/** Whether a beat of this length is a dotted value. */
export function isDotted(beat: Fraction): boolean {
  return beat.num === 3;
}

/** Seconds of a length in whole notes at a tempo in quarter notes a minute. */
export function wholeNotesToSeconds(length: Fraction | number, bpm: Bpm): Seconds {
  const wholes = typeof length === 'number' ? length : toNumber(length);
  return Seconds((wholes * 240) / bpm);
}
