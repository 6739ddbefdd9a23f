/**
 * What is written around each beat of an average bar of the form: what the pulse is felt by.
 *
 * Conventions: weights are how often a stroke is written, from 0 to 1 a bar, and twice that for cymbals on a beat,
 * which keep the time; times in seconds.
 */
import type { FormGrid } from './form-grid.ts';
import { speaksFor, THERE, WRITTEN } from './match-bar.ts';
import { firstFrom, KIND_COUNT, kindOf, type Observations } from './observations.ts';

/** A stroke of the average bar. */
export interface BeatStroke {
  /** Index of its kind of sound. */
  readonly kind: number;
  /** How often it is written, 0 to 1 a bar; twice that for cymbals on a beat. */
  readonly weight: number;
  /** How far into its beat, from 0. */
  readonly fraction: number;
}

/** One beat of the average bar. */
export interface Beat {
  /** Length as a share of the bar. */
  readonly share: number;
  /** Strokes on the beat, and those before the next one. */
  readonly on: readonly BeatStroke[];
  readonly off: readonly BeatStroke[];
}

const CYMBAL = kindOf('ride');
/** Fractions of a beat that differ by less are one. */
const SAME = 1e-6;

function strokesOf(grid: FormGrid, start: number, share: number): readonly BeatStroke[] {
  const found = new Map<string, { kind: number; weight: number; fraction: number }>();
  for (const { strokes } of grid.bars) {
    for (const { voice, position, onBeat } of strokes) {
      const fraction = onBeat ? Math.round((position - start) / share) : (position - start) / share;
      if (fraction < 0 || fraction > 1 - SAME) continue;
      const kind = kindOf(voice);
      const key = `${kind} ${fraction.toFixed(4)}`;
      const entry = found.get(key) ?? { kind, weight: 0, fraction };
      entry.weight += (onBeat && kind === CYMBAL ? 2 : 1) / grid.bars.length;
      found.set(key, entry);
    }
  }
  return [...found.values()];
}

/** The beats of the average bar. */
export function beatsOf(grid: FormGrid): readonly Beat[] {
  return grid.beats.map((start, beat): Beat => {
    const share = (grid.beats[beat + 1] ?? 1) - start;
    const strokes = strokesOf(grid, start, share);
    return {
      share,
      on: strokes.filter(({ fraction }) => fraction === 0),
      off: strokes.filter(({ fraction }) => fraction > 0),
    };
  });
}

/** Where strokes are looked for. */
export interface Span {
  readonly startSeconds: number;
  readonly seconds: number;
  /** Seconds that a stroke may lie from its place. */
  readonly tolerance: number;
}

/** How well strokes are seen where they should be. */
export interface Sight {
  /** As by `matchBar`, weights gained less weights lost; no unit. */
  readonly score: number;
  /** Weighted mean of how late they are, in seconds. */
  readonly shift: number;
  /** Weight of what is seen, as a share of all; 1 where nothing is written. */
  readonly match: number;
}

/** What counts of a stroke's time even where another kind is seen. */
const OTHER_KIND = 0.15;

/** Looks for the strokes of a beat. */
export function lookFor(seen: Observations, strokes: readonly BeatStroke[], span: Span): Sight {
  const { times, values } = seen;
  const { startSeconds, seconds, tolerance } = span;
  let [score, shiftSum, found, possible] = [0, 0, 0, 0];
  for (const { kind, weight, fraction } of strokes) {
    const place = startSeconds + fraction * seconds;
    let [best, late, own] = [0, 0, 0];
    for (let i = firstFrom(times, place - tolerance); i < times.length; i += 1) {
      const delta = times[i]! - place;
      if (delta > tolerance) break;
      const near = speaksFor(seen, i, kind) * (1 - (0.7 * Math.abs(delta)) / tolerance);
      if (near <= best) continue;
      best = near;
      late = delta;
      own = OTHER_KIND + values[i * KIND_COUNT + kind]!;
    }
    score += weight * (THERE * best - WRITTEN);
    possible += weight;
    found += weight * own;
    shiftSum += weight * own * late;
  }
  return {
    score,
    shift: found > 0 ? shiftSum / found : 0,
    match: possible > 0 ? found / possible : 1,
  };
}
