/**
 * Drawing bars of about a wanted difficulty from a vocabulary that has too many to list.
 *
 * Conventions: points; `tilt` is in 1/points: large draws easy bars, negative draws hard ones, 0 draws all alike.
 * Source: sampling a Markov chain with Boltzmann weights by backward messages (transfer matrices): a bar is drawn
 * with probability proportional to e^(−tilt · points), exactly, in time and memory that do not grow with the
 * number of bars.
 */
import type { PatternRules, Random } from '@shedbook/core';
import type { PointTables } from './tables.ts';

/** Draws one bar, by cell indices. */
export type DrawBar = (random: Random) => Uint16Array;

interface Chain {
  readonly n: number;
  readonly length: number;
  /** Weight of a move with the beat it starts from. */
  readonly weight: Float64Array;
}

function chainOf(tables: PointTables, rules: PatternRules, tilt: number): Chain {
  const n = tables.cells.length;
  const weight = new Float64Array(tables.move.length);
  for (let beat = 0; beat < tables.length; beat += 1) {
    for (let from = 0; from < n; from += 1) {
      const at = beat * n + from;
      if (!(rules.allows?.(beat, from) ?? true)) continue;
      for (let to = 0; to < n; to += 1) {
        if (!(rules.allowsMove?.(beat, from, to) ?? true)) continue;
        const points = (tables.beat[at] as number) + (tables.move[at * n + to] as number);
        weight[at * n + to] = Math.exp(-tilt * points);
      }
    }
  }
  return { n, length: tables.length, weight };
}

/** For one first cell: total weight of all ways from a cell on a beat round to the first, at `beat · n + cell`. */
function messagesTo(chain: Chain, first: number): Float64Array {
  const { n, length, weight } = chain;
  const messages = new Float64Array(length * n);
  for (let from = 0; from < n; from += 1) {
    messages[(length - 1) * n + from] = weight[((length - 1) * n + from) * n + first] as number;
  }
  for (let beat = length - 2; beat >= 0; beat -= 1) {
    let largest = 0;
    for (let from = 0; from < n; from += 1) {
      let sum = 0;
      const row = (beat * n + from) * n;
      for (let to = 0; to < n; to += 1) {
        sum += (weight[row + to] as number) * (messages[(beat + 1) * n + to] as number);
      }
      messages[beat * n + from] = sum;
      largest = Math.max(largest, sum);
    }
    if (largest === 0) break;
  }
  return messages;
}

function pick(weights: ArrayLike<number>, random: Random): number {
  let total = 0;
  for (let i = 0; i < weights.length; i += 1) total += weights[i] as number;
  let rest = random.next() * total;
  let last = 0;
  for (let i = 0; i < weights.length; i += 1) {
    const weight = weights[i] as number;
    if (weight === 0) continue;
    last = i;
    rest -= weight;
    if (rest < 0) return i;
  }
  return last;
}

/** A way to draw bars with a tilt, or null when the rules leave none. */
export function tiltedDraw(tables: PointTables, rules: PatternRules, tilt: number): DrawBar | null {
  const chain = chainOf(tables, rules, tilt);
  const { n, length, weight } = chain;
  const messages = Array.from({ length: n }, (_, first) => messagesTo(chain, first));
  const starts = messages.map((each, first) => each[first] as number);
  if (starts.every((each) => each === 0)) return null;
  const step = new Float64Array(n);
  return (random) => {
    const bar = new Uint16Array(length);
    const first = pick(starts, random);
    bar[0] = first;
    const after = messages[first] as Float64Array;
    for (let beat = 1; beat < length; beat += 1) {
      const row = ((beat - 1) * n + (bar[beat - 1] as number)) * n;
      for (let to = 0; to < n; to += 1) {
        step[to] = (weight[row + to] as number) * (after[beat * n + to] as number);
      }
      bar[beat] = pick(step, random);
    }
    return bar;
  };
}
