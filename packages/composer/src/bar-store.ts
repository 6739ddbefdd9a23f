/**
 * Every bar that a page may take, by its cells: candidates, and, where they are a sample, any other bar that the rules
 * allow.
 *
 * Conventions: difficulty in points; bars are the same object each time they are asked for.
 */
import type { Random } from '@shedbook/core';
import { type Alphabet, type PageBar, pageBar } from './page-bar.ts';
import type { Pool } from './pool.ts';
import { displaced, stepsFrom } from './theme.ts';

/** A bar that is one step from a theme, or the theme. */
export interface FamilyBar {
  readonly bar: PageBar;
  /** Whether it is the theme displaced and nothing else. */
  readonly displaces: boolean;
}

/** Finds bars by their cells. */
export interface BarStore {
  /** The bar of these cells, or null where it may not stand on the page. */
  find(cells: Uint16Array): PageBar | null;
  /** A theme and the bars one step from it, in ascending order of points. */
  family(theme: PageBar): readonly FamilyBar[];
}

/** Steps from a theme that are looked at where bars are a sample, at most. */
const STEPS_AT_MOST = 120;

/** Some of a list, spread over it. */
export function someOf<T>(list: readonly T[], most: number, random: Random): readonly T[] {
  if (list.length <= most) return list;
  const stride = list.length / most;
  return Array.from({ length: most }, (_, i) => list[Math.floor((i + random.next()) * stride)] as T);
}

/** A short name for cells: a number where that is exact, else a text. */
function keyOf(cells: ArrayLike<number>, kinds: number): number | string {
  if (kinds ** cells.length > Number.MAX_SAFE_INTEGER) return Array.from(cells).join();
  let key = 0;
  for (let i = 0; i < cells.length; i += 1) key = key * kinds + (cells[i] as number);
  return key;
}

/** The store of a page's candidates; bars beyond them are no harder than the hardest. */
export function barStore(
  alphabet: Alphabet,
  candidates: readonly PageBar[],
  pool: Pool,
  random: Random,
): BarStore {
  const kinds = alphabet.cells.length;
  const known = new Map<number | string, PageBar | null>();
  for (const bar of candidates) known.set(keyOf(bar.cells, kinds), bar);
  const most = candidates.at(-1)?.points ?? 0;
  const find = (cells: Uint16Array): PageBar | null => {
    const key = keyOf(cells, kinds);
    const bar = known.get(key);
    if (bar !== undefined || pool.complete) return bar ?? null;
    const graded = pool.grade(cells);
    const made = graded && graded.points <= most ? pageBar(alphabet, graded.cells, graded.points) : null;
    known.set(key, made);
    return made;
  };
  const families = new Map<PageBar, readonly FamilyBar[]>();
  const family = (theme: PageBar): readonly FamilyBar[] => {
    const ready = families.get(theme);
    if (ready) return ready;
    const cells = Uint16Array.from(theme.cells);
    const steps = stepsFrom(cells, alphabet.vocabulary);
    const turns = cells.map((_, later) => later).subarray(1);
    const moved = new Set(Array.from(turns, (later) => find(displaced(cells, later))));
    const looked = pool.complete ? steps : someOf(steps, STEPS_AT_MOST, random);
    const bars = new Set([theme, ...moved, ...looked.map(find)].filter((bar) => bar !== null));
    const made = [...bars]
      .map((bar): FamilyBar => ({ bar, displaces: bar !== theme && moved.has(bar) }))
      .sort((a, b) => a.bar.points - b.bar.points);
    families.set(theme, made);
    return made;
  };
  return { find, family };
}
