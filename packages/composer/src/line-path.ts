/**
 * The lines of one block: the path through a theme's bars of which the cost is least, with difficulty rising.
 *
 * Conventions: bars in ascending order of points; lines from 0 inside the block.
 * Source: shortest path by dynamic programming over (line, bar, whether the theme itself has been stated).
 */
import type { PageBar } from './page-bar.ts';

/** What a path is sought for. */
export interface PathTask {
  /** In ascending order of points. */
  readonly bars: readonly PageBar[];
  /** Index of the bar that states the theme. */
  readonly theme: number;
  readonly lines: number;
  /** What a bar costs by itself on a line, at `line · bars + bar`; infinite where it may not stand there. */
  readonly own: Float64Array;
  /** The cost of the step from one bar to the next. */
  readonly stepCost: (a: PageBar, b: PageBar) => number;
}

/** Costs of the best ways to each bar, without the theme and with it, and where they come from. */
interface Table {
  readonly cost: readonly [Float64Array, Float64Array];
  readonly from: readonly [Int32Array, Int32Array];
}

/** Way back from a state: twice the bar, and 1 where the theme was stated before. */
const STATED = 1;

function tableOf(size: number): Table {
  const cost = () => new Float64Array(size).fill(Number.POSITIVE_INFINITY);
  const from = () => new Int32Array(size).fill(-1);
  return { cost: [cost(), cost()], from: [from(), from()] };
}

/** Goes on to a bar on the next line from every bar before it. */
function arrive(task: PathTask, j: number, own: number, before: Table, next: Table): void {
  const { bars, theme, stepCost } = task;
  const to = bars[j] as PageBar;
  const [open, stated] = before.cost;
  let bestOpen = Number.POSITIVE_INFINITY;
  let bestStated = Number.POSITIVE_INFINITY;
  let fromOpen = -1;
  let fromStated = -1;
  for (let i = 0; i < j; i += 1) {
    if (Math.min(open[i] as number, stated[i] as number) === Number.POSITIVE_INFINITY) continue;
    const cost = own + stepCost(bars[i] as PageBar, to);
    if ((open[i] as number) + cost < bestOpen) {
      bestOpen = (open[i] as number) + cost;
      fromOpen = 2 * i;
    }
    if ((stated[i] as number) + cost < bestStated) {
      bestStated = (stated[i] as number) + cost;
      fromStated = 2 * i + STATED;
    }
  }
  if (j === theme && bestOpen < bestStated) {
    bestStated = bestOpen;
    fromStated = fromOpen;
  }
  next.cost[1][j] = bestStated;
  next.from[1][j] = fromStated;
  if (j === theme) return;
  next.cost[0][j] = bestOpen;
  next.from[0][j] = fromOpen;
}

/** The way back from the cheapest last bar with the theme stated, or null where there is none. */
function wayBack(task: PathTask, tables: readonly Table[]): readonly PageBar[] | null {
  const last = (tables.at(-1) as Table).cost[1];
  let at = 0;
  for (let j = 1; j < last.length; j += 1) if ((last[j] as number) < (last[at] as number)) at = j;
  if (last[at] === Number.POSITIVE_INFINITY || last.length === 0) return null;
  const path: PageBar[] = [];
  let state = 2 * at + STATED;
  for (let line = task.lines - 1; line >= 0; line -= 1) {
    const bar = state >> 1;
    path.unshift(task.bars[bar] as PageBar);
    state = (tables[line] as Table).from[state & STATED ? 1 : 0][bar] as number;
  }
  return path;
}

/** The best path on which the theme is stated, or null where there is none. */
export function bestPath(task: PathTask): readonly PageBar[] | null {
  const { bars, own, theme, lines } = task;
  const size = bars.length;
  const tables = Array.from({ length: lines }, () => tableOf(size));
  for (let j = 0; j < size; j += 1) {
    (tables[0] as Table).cost[j === theme ? 1 : 0][j] = own[j] as number;
  }
  for (let line = 1; line < lines; line += 1) {
    for (let j = 1; j < size; j += 1) {
      const cost = own[line * size + j] as number;
      if (cost < Number.POSITIVE_INFINITY) {
        arrive(task, j, cost, tables[line - 1] as Table, tables[line] as Table);
      }
    }
  }
  return wayBack(task, tables);
}
