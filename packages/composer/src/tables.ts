/**
 * Tables that grade any bar of a vocabulary by looking up its beats and moves.
 *
 * Conventions: points; cells as indices; beats from 0. `points` gives the same number as `gradeCells` up to the
 * rounding of floats.
 */
import type { Cell, PatternRules } from '@shedbook/core';
import type { Counts } from './counts.ts';
import { countBar, type GradeSettings } from './grade.ts';
import type { Ground } from './ground.ts';
import { newBeats } from './memory.ts';
import { PARTS } from './parts.data.ts';
import { countScoreBeat, countScoreMove, type LimbCell } from './score.ts';
import type { Script } from './script.ts';

/** Points by beat, cell and move. */
export interface PointTables {
  readonly cells: readonly Cell[];
  readonly length: number;
  /** Points of a cell on a beat, at `beat · cells + cell`. */
  readonly beat: Float64Array;
  /** Points of a move, at `(beat · cells + from) · cells + to`. */
  readonly move: Float64Array;
  /** Points of a pattern, whole-bar measures included. */
  points(pattern: ArrayLike<number>): number;
}

function weigh(counts: Counts, settings: GradeSettings): number {
  return PARTS.reduce((sum, part) => sum + (counts[part] ?? 0) * settings.weights[part], 0);
}

function fill(
  tables: { beat: Float64Array; move: Float64Array },
  length: number,
  lines: readonly (readonly LimbCell[])[],
  settings: GradeSettings,
): void {
  const n = lines.length;
  for (let beat = 0; beat < length; beat += 1) {
    lines.forEach((here, from) => {
      tables.beat[beat * n + from] = weigh(countScoreBeat(beat, here, settings.handSpeed), settings);
      lines.forEach((next, to) => {
        const counts = countScoreMove(beat, here, next, settings.handSpeed);
        tables.move[(beat * n + from) * n + to] = weigh(counts, settings);
      });
    });
  }
}

/** Points of the measures that need a whole bar; each bar is worked out once. */
function wholeBarPoints(ground: Ground, cells: readonly Cell[], settings: GradeSettings) {
  const { lhl, keith } = settings.weights;
  if (lhl === 0 && keith === 0) return () => 0;
  const inBar = ground.meter.beats.length;
  const known = new Map<string, number>();
  const barPoints = (bar: readonly number[]) => {
    const key = bar.join();
    const written = () => bar.map((index) => cells[index] as Cell);
    const points = known.get(key) ?? weigh(countBar(ground, written()), settings);
    known.set(key, points);
    return points;
  };
  return (pattern: ArrayLike<number>) => {
    const all = Array.from(pattern);
    let points = 0;
    for (let start = 0; start < all.length; start += inBar)
      points += barPoints(all.slice(start, start + inBar));
    return points;
  };
}

/**
 * Tables for a vocabulary over a ground.
 * @param played how the cells are played; by one limb, as written, when left out
 */
export function pointTables(
  ground: Ground,
  cells: readonly Cell[],
  settings: GradeSettings,
  played: Pick<Script, 'lines'> = { lines: (cell) => [{ ground, cell }] },
): PointTables {
  const n = cells.length;
  const { length } = ground;
  const tables = { beat: new Float64Array(length * n), move: new Float64Array(length * n * n) };
  const lines = cells.map((cell) => played.lines(cell));
  fill(tables, length, lines, settings);
  const wholeBar = wholeBarPoints(ground, cells, settings);
  const inBar = ground.meter.beats.length;
  const points = (pattern: ArrayLike<number>) => {
    let sum = wholeBar(pattern) + settings.weights.memory * newBeats(pattern, inBar);
    for (let beat = 0; beat < length; beat += 1) {
      const at = beat * n + (pattern[beat] as number);
      const next = pattern[beat + 1 === length ? 0 : beat + 1] as number;
      sum += (tables.beat[at] as number) + (tables.move[at * n + next] as number);
    }
    return sum;
  };
  return { ...tables, cells, length, points };
}

/** Whether a pattern keeps to the rules; the plain check behind every sampled candidate. */
export function keepsRules(
  rules: PatternRules,
  strokes: readonly number[],
  pattern: ArrayLike<number>,
): boolean {
  const { beats, bars } = rules;
  const length = beats * bars;
  for (let bar = 0; bar < bars; bar += 1) {
    let struck = 0;
    let silent = 0;
    for (let i = 0; i < beats; i += 1) {
      const beat = bar * beats + i;
      const cell = pattern[beat] as number;
      const next = pattern[beat + 1 === length ? 0 : beat + 1] as number;
      if (!(rules.allows?.(beat, cell) ?? true) || !(rules.allowsMove?.(beat, cell, next) ?? true))
        return false;
      const count = strokes[cell] as number;
      struck += count;
      if (count === 0) silent += 1;
    }
    if (!isWithin(rules.strokes, struck) || !isWithin(rules.rests, silent)) return false;
  }
  return true;
}

function isWithin(limit: PatternRules['strokes'], value: number): boolean {
  if (!limit) return true;
  return value >= limit.least && (limit.most === null || value <= limit.most);
}
