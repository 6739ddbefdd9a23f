/**
 * Following the pulse bar by bar from a first guess, in both directions, through drift and wandering.
 *
 * Conventions: seconds; a tracked bar has its own start and length. Matching allows for a feel unlike the
 * lesson's: a stroke may lie TOLERANCE of a beat from its place, 90 ms at most.
 */
import type { ExpectedBar, FormGrid } from './form-grid.ts';
import { ANY, firstFrom, KIND_COUNT, kindOf, type Observations } from './observations.ts';
import type { PulseGuess } from './pulse.ts';

/** One bar of the take. */
export interface TrackedBar {
  readonly startSeconds: number;
  readonly barSeconds: number;
}

const TOLERANCE = 0.13;
const MOST_SECONDS = 0.09;
/** How much of what a bar shows goes into the next bar's start and length. */
const GAIN_START = 0.55;
const GAIN_LENGTH = 0.25;
/** A bar that matches less than this is doubted. */
const LEAST_MATCH = 0.12;
const DOUBTED_BARS = 2;

/** Seconds that a stroke may lie from its place. */
export function toleranceSeconds(grid: FormGrid, barSeconds: number): number {
  return Math.min(MOST_SECONDS, (TOLERANCE * barSeconds) / grid.beats.length);
}

/** Every stroke of the form that some bar has at a beat, with how often: what the pulse is felt by. */
function beatStrokes(grid: FormGrid): readonly { position: number; kind: number; weight: number }[] {
  const counts = new Map<string, { position: number; kind: number; weight: number }>();
  for (const bar of grid.bars) {
    for (const stroke of bar.strokes) {
      if (!stroke.onBeat) continue;
      const kind = kindOf(stroke.voice);
      const key = `${stroke.position.toFixed(5)} ${kind}`;
      const entry = counts.get(key) ?? { position: stroke.position, kind, weight: 0 };
      entry.weight += (kind === 0 ? 2 : 1) / grid.bars.length;
      counts.set(key, entry);
    }
  }
  return [...counts.values()];
}

/** How far the strokes near the beats lie from a tracked bar: shift at its start, change of its length. */
function residual(
  seen: Observations,
  strokes: ReturnType<typeof beatStrokes>,
  bar: TrackedBar,
  tolerance: number,
): { shift: number; stretch: number; match: number } {
  let weightSum = 1e-9;
  let shiftSum = 0;
  let positionSum = 0;
  const found: { position: number; delta: number; weight: number }[] = [];
  let possible = 1e-9;
  for (const stroke of strokes) {
    const place = bar.startSeconds + stroke.position * bar.barSeconds;
    possible += stroke.weight;
    let best = -1;
    let bestScore = 0;
    for (let i = firstFrom(seen.times, place - tolerance); i < seen.times.length; i += 1) {
      const delta = seen.times[i]! - place;
      if (delta > tolerance) break;
      const value = seen.values[i * KIND_COUNT + stroke.kind]! + 0.4 * seen.values[i * KIND_COUNT + ANY]!;
      const score = value * (1 - Math.abs(delta) / tolerance);
      if (score > bestScore) {
        bestScore = score;
        best = i;
      }
    }
    if (best < 0) continue;
    const value = seen.values[best * KIND_COUNT + stroke.kind]!;
    const weight = stroke.weight * (0.15 + value);
    const delta = seen.times[best]! - place;
    found.push({ position: stroke.position, delta, weight });
    weightSum += weight;
    shiftSum += weight * delta;
    positionSum += weight * stroke.position;
  }
  const meanShift = shiftSum / weightSum;
  const meanPosition = positionSum / weightSum;
  let cross = 0;
  let square = 1e-6;
  for (const { position, delta, weight } of found) {
    cross += weight * (position - meanPosition) * (delta - meanShift);
    square += weight * (position - meanPosition) ** 2;
  }
  const slope = found.length > 2 ? cross / (square + 0.3 * weightSum) : 0;
  return { shift: meanShift - slope * meanPosition, stretch: slope, match: weightSum / possible };
}

function clampLength(length: number, reference: number): number {
  return Math.min(reference * 1.35, Math.max(reference / 1.35, length));
}

/** The bars of the take that hang together with a guess, in order. */
export function followPulse(
  seen: Observations,
  grid: FormGrid,
  guess: PulseGuess,
  limits: { readonly fromSeconds: number; readonly toSeconds: number },
): readonly TrackedBar[] {
  const strokes = beatStrokes(grid);
  const settle = (bar: TrackedBar, rounds: number) => {
    let settled = bar;
    for (let i = 0; i < rounds; i += 1) {
      const { shift, stretch } = residual(seen, strokes, settled, toleranceSeconds(grid, settled.barSeconds));
      settled = {
        startSeconds: settled.startSeconds + shift * 0.7,
        barSeconds: settled.barSeconds + stretch * 0.5,
      };
    }
    return settled;
  };
  const first = settle({ startSeconds: guess.startSeconds, barSeconds: guess.barSeconds }, 4);
  const walk = (direction: 1 | -1) => {
    const bars: TrackedBar[] = [];
    let bar = first;
    let doubted = 0;
    for (;;) {
      const startSeconds =
        direction === 1 ? bar.startSeconds + bar.barSeconds : bar.startSeconds - bar.barSeconds;
      if (startSeconds + bar.barSeconds * 0.6 < limits.fromSeconds || startSeconds > limits.toSeconds) break;
      const ahead = { startSeconds, barSeconds: bar.barSeconds };
      const { shift, stretch, match } = residual(
        seen,
        strokes,
        ahead,
        toleranceSeconds(grid, bar.barSeconds),
      );
      doubted = match < LEAST_MATCH ? doubted + 1 : 0;
      if (doubted > DOUBTED_BARS) break;
      const trust = Math.min(1, match * 2);
      const change = GAIN_LENGTH * (stretch + (direction === 1 ? shift : -shift) * 0.5);
      bar = {
        startSeconds: startSeconds + trust * (GAIN_START * (shift + stretch / 2) - (change * trust) / 2),
        barSeconds: clampLength(bar.barSeconds + trust * change, guess.barSeconds),
      };
      bars.push(bar);
    }
    return bars.slice(0, bars.length - doubted);
  };
  return [...walk(-1).reverse(), first, ...walk(1)];
}

/** How well one written bar explains one bar of the take; about −1 to 1.5 a stroke. */
export function matchBar(seen: Observations, grid: FormGrid, expected: ExpectedBar, bar: TrackedBar): number {
  const tolerance = toleranceSeconds(grid, bar.barSeconds);
  const early = Math.min(tolerance, 0.04);
  const from = firstFrom(seen.times, bar.startSeconds - early);
  const end = bar.startSeconds + bar.barSeconds - early;
  let to = from;
  while (to < seen.times.length && seen.times[to]! < end) to += 1;
  const explained = new Float64Array((to - from) * KIND_COUNT);
  let score = 0;
  for (const stroke of expected.strokes) {
    const place = bar.startSeconds + stroke.position * bar.barSeconds;
    const kind = kindOf(stroke.voice);
    let value = 0;
    for (let i = from; i < to; i += 1) {
      const distance = Math.abs(seen.times[i]! - place);
      if (distance > tolerance) continue;
      const near = 1 - 0.5 * (distance / tolerance);
      value = Math.max(
        value,
        near * (0.75 * seen.values[i * KIND_COUNT + kind]! + 0.25 * seen.values[i * KIND_COUNT + ANY]!),
      );
      explained[(i - from) * KIND_COUNT + kind] = 1;
      explained[(i - from) * KIND_COUNT + ANY] = 1;
    }
    score += 2 * value - 0.7;
  }
  for (let i = from; i < to; i += 1) {
    for (let kind = 0; kind < KIND_COUNT; kind += 1) {
      if (explained[(i - from) * KIND_COUNT + kind] === 0) score -= 0.5 * seen.values[i * KIND_COUNT + kind]!;
    }
  }
  return score;
}
