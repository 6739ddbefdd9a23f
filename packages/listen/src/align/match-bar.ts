/**
 * How well written strokes explain what is seen of a take.
 *
 * Conventions: seconds. Matching allows for a feel unlike the lesson's: a stroke may lie TOLERANCE of a beat from its
 * place, 90 ms at most. Values count by their cube, since what is half seen is mostly not there: in takes of known
 * strokes four in five cymbals, bass drums and drums that were struck have a value over 0.9, and one in twenty-five of
 * those that were not when something else was, while values from 0.3 to 0.7 are five times as frequent there.
 */
import type { ExpectedBar, FormGrid } from './form-grid.ts';
import { ANY, firstFrom, KIND_COUNT, kindOf, type Observations } from './observations.ts';

/** One bar of the take. */
export interface TrackedBar {
  readonly startSeconds: number;
  readonly barSeconds: number;
}

const TOLERANCE = 0.13;
const MOST_SECONDS = 0.09;
/** What speaks for a written stroke when it is surely there. */
export const THERE = 2;
/** What is taken off for a written stroke, whether it is there or not. */
export const WRITTEN = 0.9;
/** Share of its own kind in what speaks for a stroke; the rest is that anything was struck. */
const OWN = 0.75;
/** Cost of something seen that is not written, beside one seen for sure. */
const UNWRITTEN = 0.5;

/** Seconds that a stroke may lie from its place. */
export function toleranceSeconds(grid: FormGrid, barSeconds: number): number {
  return Math.min(MOST_SECONDS, (TOLERANCE * barSeconds) / grid.beats.length);
}

function surely(value: number): number {
  return value * value * value;
}

/** How much a moment speaks for a stroke of a kind there, 0 to 1. */
export function speaksFor({ values }: Observations, moment: number, kind: number): number {
  const row = moment * KIND_COUNT;
  return OWN * surely(values[row + kind]!) + (1 - OWN) * surely(values[row + ANY]!);
}

/** What is seen of one kind at a moment and not written, as a score under 0. */
export function unwritten({ values }: Observations, moment: number, kind: number): number {
  return -UNWRITTEN * surely(values[moment * KIND_COUNT + kind]!);
}

/** How well one written bar explains one bar of the take; about −1 to 1.1 a stroke. */
export function matchBar(seen: Observations, grid: FormGrid, expected: ExpectedBar, bar: TrackedBar): number {
  const tolerance = toleranceSeconds(grid, bar.barSeconds);
  const early = Math.min(tolerance, 0.04);
  const from = firstFrom(seen.times, bar.startSeconds - early);
  const end = bar.startSeconds + bar.barSeconds - early;
  let to = from;
  while (to < seen.times.length && seen.times[to]! < end) to += 1;
  const explained = new Uint8Array((to - from) * KIND_COUNT);
  let score = 0;
  for (const stroke of expected.strokes) {
    const place = bar.startSeconds + stroke.position * bar.barSeconds;
    const kind = kindOf(stroke.voice);
    let value = 0;
    for (let i = from; i < to; i += 1) {
      const distance = Math.abs(seen.times[i]! - place);
      if (distance > tolerance) continue;
      const near = 1 - 0.5 * (distance / tolerance);
      value = Math.max(value, near * speaksFor(seen, i, kind));
      explained[(i - from) * KIND_COUNT + kind] = 1;
      explained[(i - from) * KIND_COUNT + ANY] = 1;
    }
    score += THERE * value - WRITTEN;
  }
  for (let i = from; i < to; i += 1) {
    for (let kind = 0; kind < KIND_COUNT; kind += 1) {
      if (explained[(i - from) * KIND_COUNT + kind] === 0) score += unwritten(seen, i, kind);
    }
  }
  return score;
}
