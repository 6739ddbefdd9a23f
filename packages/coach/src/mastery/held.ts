/**
 * The tempo that an exercise is held at: where half of the loops would be clean, estimated from loops at several tempi.
 *
 * Conventions: tempi in quarter notes a minute.
 * Sources: a chance of success that falls along a logistic curve with a few lapses, fitted by maximum likelihood:
 * Wichmann & Hill (2001), Perception & Psychophysics 63(8), 1293–1313. Differs from the source: the width of the curve
 * and the lapses are fixed, since a day has only some tens of loops.
 */
import type { LoopRecord } from '@shedbook/core';

/** Width of the curve: one more in the odds of a clean loop for so many quarter notes a minute (our choice). */
const WIDTH_BPM = 6;

/** Share of loops that an ear or a slip decides, at both ends. */
const LAPSES = 0.06;

const GRID_BPM = 2;

/** How far beyond the tempi that were played the estimate may lie. */
const BEYOND_BPM = 16;

/** How many loops of a tempo were clean, and how many were not. */
interface AtTempo {
  readonly bpm: number;
  clean: number;
  other: number;
}

function byTempo(loops: readonly LoopRecord[]): readonly AtTempo[] {
  const tempi = new Map<number, AtTempo>();
  for (const { bpm, verdict } of loops) {
    const at = tempi.get(bpm) ?? { bpm, clean: 0, other: 0 };
    if (verdict === 'clean') at.clean += 1;
    else at.other += 1;
    tempi.set(bpm, at);
  }
  return [...tempi.values()];
}

function logLikelihood(tempi: readonly AtTempo[], heldBpm: number): number {
  let sum = 0;
  for (const { bpm, clean, other } of tempi) {
    const share = LAPSES + (1 - 2 * LAPSES) / (1 + Math.exp((bpm - heldBpm) / WIDTH_BPM));
    sum += clean * Math.log(share) + other * Math.log(1 - share);
  }
  return sum;
}

/** The tempo at which half of the loops would be clean; null without loops. */
export function heldBpmOf(loops: readonly LoopRecord[]): number | null {
  if (loops.length === 0) return null;
  const tempi = byTempo(loops);
  const all = tempi.map(({ bpm }) => bpm);
  const least = Math.min(...all) - BEYOND_BPM;
  const steps = Math.ceil((Math.max(...all) + BEYOND_BPM - least) / GRID_BPM);
  let best = { bpm: least, score: Number.NEGATIVE_INFINITY };
  for (let i = 0; i <= steps; i += 1) {
    const bpm = least + i * GRID_BPM;
    const score = logLikelihood(tempi, bpm);
    if (score > best.score) best = { bpm, score };
  }
  return best.bpm;
}

/** The tempo at which a share of the loops would be clean, from the one that half of them are. */
export function bpmForShare(heldBpm: number, share: number): number {
  return heldBpm - WIDTH_BPM * Math.log(share / (1 - share));
}
