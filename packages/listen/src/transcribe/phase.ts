/**
 * Where strokes lie between beats.
 *
 * Conventions: beats in seconds, in order; a place is counted in beats from the first one.
 */
import { median } from '@shedbook/signal';
import type { StruckVoice } from './struck.ts';

/** A stroke with its place. */
export interface PlacedVoice {
  readonly stroke: StruckVoice;
  /** In beats from the first one. */
  readonly at: number;
}

/** How far into its beat a place is, from 0 to 1. */
export function phaseOf({ at }: Pick<PlacedVoice, 'at'>): number {
  return at - Math.floor(at);
}

/** The place of a moment among beats, in beats from the first; beyond both ends time goes on as there. */
export function placeIn(beats: readonly number[], seconds: number): number {
  let low = 0;
  let high = beats.length - 1;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (beats[middle]! <= seconds) low = middle;
    else high = middle - 1;
  }
  const index = Math.min(low, beats.length - 2);
  return index + (seconds - beats[index]!) / (beats[index + 1]! - beats[index]!);
}

/** Seconds of a beat, in the middle. */
export function beatSecondsOf(beats: readonly number[]): number {
  return median(beats.slice(1).map((beat, i) => beat - beats[i]!));
}
