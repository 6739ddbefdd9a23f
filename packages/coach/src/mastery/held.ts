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

function logLikelihood(loops: readonly LoopRecord[], heldBpm: number): number {
  return loops.reduce((sum, { bpm, verdict }) => {
    const clean = LAPSES + (1 - 2 * LAPSES) / (1 + Math.exp((bpm - heldBpm) / WIDTH_BPM));
    return sum + Math.log(verdict === 'clean' ? clean : 1 - clean);
  }, 0);
}

/** The tempo at which half of the loops would be clean; null without loops. */
export function heldBpmOf(loops: readonly LoopRecord[]): number | null {
  if (loops.length === 0) return null;
  const tempi = loops.map(({ bpm }) => bpm);
  const least = Math.min(...tempi) - BEYOND_BPM;
  const steps = Math.ceil((Math.max(...tempi) + BEYOND_BPM - least) / GRID_BPM);
  const grid = Array.from({ length: steps + 1 }, (_, i) => least + i * GRID_BPM);
  const scored = grid.map((bpm) => ({ bpm, score: logLikelihood(loops, bpm) }));
  return scored.reduce((best, each) => (each.score > best.score ? each : best)).bpm;
}

/** The tempo at which a share of the loops would be clean, from the one that half of them are. */
export function bpmForShare(heldBpm: number, share: number): number {
  return heldBpm - WIDTH_BPM * Math.log(share / (1 - share));
}
