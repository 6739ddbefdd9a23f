/**
 * Accents and ghost notes of a voice of which nobody said how loud a plain stroke is.
 *
 * Conventions: decibels on the source's own scale. The plain level is the one that explains all strokes best as plain
 * ones, accents and ghost notes, each as far from it as core's dynamics have it.
 */
import { ACCENT_DB, GHOST_DB } from '@shedbook/core';

/** What a stroke may be: how far from a plain one, and what it costs to say so, in nats. */
const TOUCHES = [
  { db: 0, accent: false, ghost: false, cost: 0 },
  { db: ACCENT_DB, accent: true, ghost: false, cost: 1 },
  { db: GHOST_DB, accent: false, ghost: true, cost: 1 },
] as const;
/** Spread of the levels of one touch, in dB. */
const SPREAD_DB = 2.2;
const STEP_DB = 0.5;
/** Furthest that a level is counted from a touch, in nats. */
const LOST = 8;

/** How a stroke was meant. */
export interface Touch {
  readonly accent: boolean;
  readonly ghost: boolean;
}

function bestAt(levelDb: number, plainDb: number) {
  return TOUCHES.map((touch) => ({
    touch,
    cost: Math.min(LOST, ((levelDb - plainDb - touch.db) / SPREAD_DB) ** 2 / 2) + touch.cost,
  })).reduce((best, one) => (one.cost < best.cost ? one : best));
}

/** The plain level of some strokes, and how each was meant. */
export function touchesOf(levelsDb: readonly number[]): {
  readonly plainDb: number;
  readonly touches: readonly Touch[];
} {
  if (levelsDb.length === 0) return { plainDb: 0, touches: [] };
  const [least, most] = [Math.min(...levelsDb) - ACCENT_DB, Math.max(...levelsDb) - GHOST_DB];
  let best = { plainDb: least, cost: Number.POSITIVE_INFINITY };
  for (let plainDb = least; plainDb <= most; plainDb += STEP_DB) {
    const cost = levelsDb.reduce((sum, level) => sum + bestAt(level, plainDb).cost, 0);
    if (cost < best.cost - 1e-9) best = { plainDb, cost };
  }
  return {
    plainDb: best.plainDb,
    touches: levelsDb.map((level) => {
      const { accent, ghost } = bestAt(level, best.plainDb).touch;
      return { accent, ghost };
    }),
  };
}
