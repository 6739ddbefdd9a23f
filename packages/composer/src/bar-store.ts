/**
 * Every bar that a page may take, by its cells: candidates, and, where they are a sample, any other bar that the rules
 * allow.
 *
 * Conventions: difficulty in points; bars are the same object each time they are asked for. A bar's key is its cells as
 * the digits of one number, the first beat's the lowest.
 */
import type { Random } from '@shedbook/core';
import { type Alphabet, keyOf, type PageBar, pageBar } from './page-bar.ts';
import type { Pool } from './pool.ts';
import { BORROWED_BEATS } from './theme.ts';
import { firstAtLeast } from './windows.ts';

/** Finds bars by their cells. */
export interface BarStore {
  /** The bar of these cells, or null where it may not stand on the page. */
  find(cells: Uint16Array): PageBar | null;
  /** A bar some beats later, or null where it may not stand on the page. */
  displaced(bar: PageBar, later: number): PageBar | null;
  /** A bar with one or two neighbouring beats of another one, at their places; by chance, or null. */
  joining(before: PageBar, theme: PageBar, random: Random): PageBar | null;
  /** A bar one step from a theme, or the theme, that has at least and at most so many points; by chance, or null. */
  near(theme: PageBar, least: number, most: number, random: Random): PageBar | null;
  /** A bar with another cell on a beat, or null where it may not stand on the page. */
  withCell(bar: PageBar, beat: number, cell: number): PageBar | null;
}

/** Steps from a theme that are tried for one draw. */
const STEPS_TRIED = 6;

/** So many bars are looked up in a table; where cells could make more, in a map. */
const TABLE_AT_MOST = 2 ** 16;

/** Some of a list, spread over it. */
export function someOf<T>(list: readonly T[], most: number, random: Random): readonly T[] {
  if (list.length <= most) return list;
  const stride = list.length / most;
  return Array.from({ length: most }, (_, i) => list[Math.floor((i + random.next()) * stride)] as T);
}

/** A bar of an ascending list with at least and at most so many points, by chance, or null. */
export function drawBetween(
  list: readonly PageBar[],
  least: number,
  most: number,
  random: Random,
): PageBar | null {
  const from = firstAtLeast(list, least);
  const to = firstAtLeast(list, most);
  return to > from ? (list[from + random.below(to - from)] as PageBar) : null;
}

/** Bars by key; undefined where none was looked for yet. */
interface Shelf {
  get(key: number): PageBar | null | undefined;
  set(key: number, bar: PageBar | null): void;
}

function shelfFor(size: number): Shelf {
  if (size > TABLE_AT_MOST) return new Map<number, PageBar | null>();
  const table = new Array<PageBar | null | undefined>(size);
  return {
    get: (key) => table[key],
    set: (key, bar) => {
      table[key] = bar;
    },
  };
}

/** The bars of a page by their keys. */
interface Keys {
  /** What a cell on each beat counts; after the last, how many keys there are. */
  readonly powers: readonly number[];
  readonly vocabulary: number;
}

/** The key of a theme that is displaced by beats: its last digits become the first. */
function displacedKey({ powers }: Keys, { key, cells }: PageBar, later: number): number {
  const split = powers[cells.length - later] as number;
  const high = Math.floor(key / split);
  return (key - high * split) * (powers[later] as number) + high;
}

/** The cell that a displaced theme has on a beat. */
function cellAt({ cells }: PageBar, later: number, beat: number): number {
  const from = beat - later;
  return cells[from < 0 ? from + cells.length : from] as number;
}

/** The keys of bars that join two themes: the later one with one or two neighbouring beats taken from the earlier. */
function joinKeys({ powers }: Keys, before: PageBar, theme: PageBar): readonly number[] {
  const found: number[] = [];
  for (let beat = 0; beat < theme.cells.length; beat += 1) {
    let { key } = theme;
    for (let at = beat; at < Math.min(beat + BORROWED_BEATS, theme.cells.length); at += 1) {
      key += ((before.cells[at] as number) - (theme.cells[at] as number)) * (powers[at] as number);
      if (key !== theme.key) found.push(key);
    }
  }
  return found;
}

/** The key of something one step from a theme, by chance. */
function anyStep(keys: Keys, theme: PageBar, random: Random): number {
  const later = random.below(theme.cells.length);
  const beat = random.below(theme.cells.length);
  const moved = displacedKey(keys, theme, later);
  // now and then as it is: a displacement by itself is the plainest step
  if (random.below(keys.vocabulary) === 0) return moved;
  return moved + (random.below(keys.vocabulary) - cellAt(theme, later, beat)) * (keys.powers[beat] as number);
}

/** The store of a page's candidates; bars beyond them are no harder than the hardest. */
export function barStore(alphabet: Alphabet, candidates: readonly PageBar[], pool: Pool): BarStore {
  const kinds = alphabet.cells.length;
  const beats = candidates[0]?.cells.length ?? 0;
  const powers = Array.from({ length: beats + 1 }, (_, beat) => kinds ** beat);
  const keys = { powers, vocabulary: alphabet.vocabulary };
  const shelf = shelfFor(kinds ** beats);
  for (const bar of candidates) shelf.set(bar.key, bar);
  const hardest = candidates.at(-1)?.points ?? 0;
  const make = (key: number): PageBar | null => {
    const cells = new Uint16Array(beats);
    let rest = key;
    for (let beat = 0; beat < beats; beat += 1) {
      cells[beat] = rest % kinds;
      rest = Math.floor(rest / kinds);
    }
    const graded = pool.grade(cells);
    return graded && graded.points <= hardest ? pageBar(alphabet, graded.cells, graded.points) : null;
  };
  const byKey = (key: number): PageBar | null => {
    const known = shelf.get(key);
    if (known !== undefined || pool.complete) return known ?? null;
    const made = make(key);
    shelf.set(key, made);
    return made;
  };
  const near = (theme: PageBar, least: number, most: number, random: Random): PageBar | null => {
    for (let tries = 0; tries < STEPS_TRIED; tries += 1) {
      const bar = byKey(anyStep(keys, theme, random));
      if (bar && bar.points >= least && bar.points <= most) return bar;
    }
    return null;
  };
  const withCell = (bar: PageBar, beat: number, cell: number): PageBar | null =>
    byKey(bar.key + (cell - (bar.cells[beat] as number)) * (powers[beat] as number));
  const displaced = (bar: PageBar, later: number): PageBar | null => byKey(displacedKey(keys, bar, later));
  const joining = (before: PageBar, theme: PageBar, random: Random): PageBar | null => {
    const joins = joinKeys(keys, before, theme);
    const key = joins[random.below(Math.max(1, joins.length))];
    return key === undefined ? null : byKey(key);
  };
  return { find: (cells) => byKey(keyOf(cells, kinds)), displaced, joining, near, withCell };
}
