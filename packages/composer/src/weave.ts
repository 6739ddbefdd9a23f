/**
 * Weaving a page: each block is given a theme, and lines that state, displace, thin, fill and join it, while the whole
 * page keeps meeting its moves and rising.
 *
 * Conventions: places from 0; difficulty in points never falls from one place to the next.
 * Source: large neighbourhood search (Shaw 1998, CP-98): one block, or two neighbours, are taken out and put back by the
 * best path through the bars of another theme; what is asked of the whole page weighs little at first and in full in
 * the end.
 */
import type { Random } from '@shedbook/core';
import { type BarStore, someOf } from './bar-store.ts';
import type { Block } from './blocks.ts';
import { candidatesByMove } from './cover.ts';
import { bestPath } from './line-path.ts';
import { type PageBar, SAME_POINTS } from './page-bar.ts';
import { changeCost, type PageAim, pageCost, phraseCost, stepCost, wholeCost } from './page-cost.ts';
import { firstIndexAtLeast } from './sorted.ts';
import { joinsOf, likeness, mostAlike } from './theme.ts';
import { firstAtLeast } from './windows.ts';

/** What the whole page's needs weigh, round by round, as a share of what they weigh in the end. */
const ROUNDS = [0.04, 0.1, 0.25, 0.5, 1] as const;

/** The same where moves are many for the page's lines: slower, since each line has to bring some. */
const TIGHT_ROUNDS = [
  ...[0.03, 0.05, 0.06, 0.06, 0.08, 0.08, 0.1, 0.1, 0.1, 0.12, 0.12, 0.15],
  ...[0.15, 0.15, 0.2, 0.2, 0.25, 0.3, 0.4, 0.6, 1, 1],
] as const;

/** Rounds more while a move or a figure is missing, at most. */
const EXTRA_ROUNDS = 3;

/** Themes tried for a block in a round. */
const THEMES = 3;

/** Themes drawn for the one that is tried. */
const DRAWN = 4;

/** Bars of a theme that a path is sought through, at most. */
const BARS_AT_MOST = 20;

/** What a path gains by a move or a figure that the rest of the page has not, by displacing and by joining. */
const GAINS = { move: 1.5, figure: 6, displaced: 0.8, joins: 0.8 } as const;

/** The gain of a missing move where the page's needs weigh in full, over that where they weigh nothing. */
const URGENCY = 1;

/** How far chance may change what a bar costs, so that no search is like the one before. */
const CHANCE = 0.6;

/** What a block costs for each line that has strayed from its theme by a beat, or never had one. */
const STRAYED = 3;

/** What weaving goes by. */
export interface WeaveTask {
  /** In ascending order of points. */
  readonly candidates: readonly PageBar[];
  readonly store: BarStore;
  readonly aim: PageAim;
  readonly blocks: readonly Block[];
  /** Whether moves are many for the page's lines. */
  readonly isTight: boolean;
  /** Bars that are figures to be quoted. */
  readonly figures: readonly PageBar[];
  /** Places that may change. */
  readonly places: ReadonlySet<number>;
}

/** A woven page: its bars, and the theme of each block. */
export interface WovenPage {
  readonly bars: readonly PageBar[];
  /** By block. */
  readonly themes: readonly (PageBar | null)[];
}

interface Loom {
  readonly task: WeaveTask;
  readonly random: Random;
  readonly page: PageBar[];
  readonly themes: (PageBar | null)[];
  readonly costOf: (page: readonly PageBar[], strictness?: number) => number;
  /** Moves that the page asks for, as a table by move. */
  readonly wanted: Uint8Array;
}

/** What the rest of the page leaves to a block. */
interface Gap {
  readonly block: Block;
  readonly index: number;
  /** Points of the bar before. */
  readonly least: number;
  /** Points of the bar after. */
  readonly most: number;
  readonly used: ReadonlySet<PageBar>;
  /** Moves that the rest of the page has, as a table by move. */
  readonly met: Uint8Array;
  /** Figures that the rest of the page has not. */
  readonly figures: ReadonlySet<string>;
  readonly strictness: number;
}

/** What a block finds when it, and `more` blocks after it, are taken out. */
function gapAt(loom: Loom, index: number, more: number, strictness: number): Gap {
  const { page, task } = loom;
  const block = task.blocks[index] as Block;
  const last = task.blocks[index + more] as Block;
  const end = last.start + last.length;
  const met = new Uint8Array(loom.wanted.length);
  const used = new Set<PageBar>();
  const figures = new Set(task.aim.figures);
  page.forEach((bar, place) => {
    if (place >= block.start && place < end) return;
    used.add(bar);
    figures.delete(bar.key);
    for (const move of bar.moves) met[move] = 1;
  });
  return {
    block,
    index,
    least: page[block.start - 1]?.points ?? Number.NEGATIVE_INFINITY,
    most: page[end]?.points ?? Number.POSITIVE_INFINITY,
    used,
    met,
    figures,
    strictness,
  };
}

function fits(bar: PageBar, gap: Gap): boolean {
  return bar.points >= gap.least - SAME_POINTS && bar.points <= gap.most + SAME_POINTS && !gap.used.has(bar);
}

function gainOf(bar: PageBar, loom: Loom, gap: Gap): number {
  let missing = 0;
  for (const move of bar.moves) if (loom.wanted[move] === 1 && gap.met[move] === 0) missing += 1;
  const gain = missing * GAINS.move * (1 + URGENCY * gap.strictness);
  return gap.figures.has(bar.key) ? gain + GAINS.figure * (1 + gap.strictness) : gain;
}

/** The bars that a block may be put back with, in order, and which of them displace the theme or join it. */
interface Thread {
  readonly bars: readonly PageBar[];
  readonly displaces: ReadonlySet<PageBar>;
  readonly joins: ReadonlySet<PageBar>;
}

function keptIn(loom: Loom, { block }: Gap): readonly PageBar[] {
  return loom.page.slice(block.start, block.start + block.length).filter((bar) => bar.keptFrom !== null);
}

function threadOf(theme: PageBar, loom: Loom, gap: Gap): Thread {
  const { store } = loom.task;
  const family = store.family(theme).filter(({ bar }) => bar !== theme && fits(bar, gap));
  const displaces = new Set(family.filter((each) => each.displaces).map((each) => each.bar));
  const bars = new Set(someOf(family, BARS_AT_MOST, loom.random).map((each) => each.bar));
  const joins = new Set<PageBar>();
  const before = loom.themes[gap.index - 1];
  if (before) {
    for (const cells of joinsOf(before.cells, theme.cells)) {
      const bar = store.find(cells);
      if (bar && bar !== theme && !bars.has(bar) && fits(bar, gap)) joins.add(bar);
    }
  }
  const quotes = loom.task.figures.filter((bar) => gap.figures.has(bar.key) && fits(bar, gap));
  const all = new Set([...bars, ...joins, ...quotes, theme, ...keptIn(loom, gap)]);
  return { bars: [...all].sort((a, b) => a.points - b.points), displaces, joins };
}

/** What each bar of a thread costs on each line of the block. */
function ownCosts(thread: Thread, loom: Loom, gap: Gap): Float64Array {
  const { aim, places } = loom.task;
  const { start, length } = gap.block;
  const size = thread.bars.length;
  const own = new Float64Array(length * size).fill(Number.POSITIVE_INFINITY);
  thread.bars.forEach((bar, i) => {
    const cost = phraseCost(bar, aim) - gainOf(bar, loom, gap) + CHANCE * loom.random.next();
    const joins = thread.joins.has(bar);
    const value = cost - (joins ? GAINS.joins : thread.displaces.has(bar) ? GAINS.displaced : 0);
    for (let line = joins ? length - 1 : 0; line < length; line += 1) {
      const isFree = places.has(start + line) && bar.keptFrom === null;
      if (isFree || loom.page[start + line] === bar) own[line * size + i] = value;
    }
  });
  return own;
}

function pathFor(theme: PageBar, loom: Loom, gap: Gap): readonly PageBar[] | null {
  const thread = threadOf(theme, loom, gap);
  const { aim } = loom.task;
  return bestPath({
    bars: thread.bars,
    theme: thread.bars.indexOf(theme),
    lines: gap.block.length,
    own: ownCosts(thread, loom, gap),
    stepCost: (a, b) => stepCost(b.points - a.points, aim) + changeCost(a, b, aim),
  });
}

/** A theme to try in a gap: of some that fit, the one with most that is missing elsewhere. */
function themeFor(loom: Loom, gap: Gap): PageBar | null {
  const { candidates } = loom.task;
  const from = firstAtLeast(candidates, gap.least - SAME_POINTS);
  const to = firstAtLeast(candidates, gap.most + 2 * SAME_POINTS);
  let best: PageBar | null = null;
  let bestGain = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < DRAWN && to > from; i += 1) {
    const bar = candidates[from + loom.random.below(to - from)] as PageBar;
    const gain = gainOf(bar, loom, gap) + loom.random.next();
    if (gain > bestGain && fits(bar, gap)) {
      best = bar;
      bestGain = gain;
    }
  }
  return best;
}

/** A figure that is missing elsewhere and fits the gap, or else any theme. */
function figureOrTheme(loom: Loom, gap: Gap): PageBar | null {
  const figures = loom.task.figures.filter((bar) => gap.figures.has(bar.key) && fits(bar, gap));
  return figures[loom.random.below(Math.max(1, figures.length))] ?? themeFor(loom, gap);
}

function unthematic(loom: Loom): number {
  let cost = 0;
  loom.task.blocks.forEach(({ start, length }, i) => {
    const theme = loom.themes[i];
    for (let place = start; place < start + length; place += 1) {
      const bar = loom.page[place] as PageBar;
      cost += STRAYED * (theme ? Math.max(0, likeness(bar.cells, theme.cells).apart - 1) : 2);
    }
  });
  return cost;
}

function loomCost(loom: Loom, strictness: number): number {
  return pageCost(loom.page, loom.task.aim, loom.costOf, strictness) + unthematic(loom);
}

/** Puts a block back with a theme. @returns whether it could be. */
function put(loom: Loom, gap: Gap, theme: PageBar | null): boolean {
  const path = theme && fits(theme, gap) ? pathFor(theme, loom, gap) : null;
  if (!path) return false;
  loom.page.splice(gap.block.start, gap.block.length, ...path);
  loom.themes[gap.index] = theme;
  return true;
}

/** Puts two neighbouring blocks back, the first below the second's theme. @returns whether they could be. */
function putTwo(loom: Loom, index: number, strictness: number): boolean {
  const both = gapAt(loom, index, 1, strictness);
  const one = figureOrTheme(loom, both);
  const other = figureOrTheme(loom, both);
  if (!one || !other || one === other) return false;
  const [lower, upper] = one.points <= other.points ? [one, other] : [other, one];
  if (!put(loom, { ...both, most: upper.points, used: new Set(both.used).add(upper) }, lower)) return false;
  return put(loom, gapAt(loom, index + 1, 0, strictness), upper);
}

/** Tries something on a page and takes it back where the page is worse for it. @returns the cost then. */
function attempt(loom: Loom, cost: number, strictness: number, act: () => boolean): number {
  const page = [...loom.page];
  const themes = [...loom.themes];
  if (act()) {
    const after = loomCost(loom, strictness);
    if (after <= cost) return after;
  }
  loom.page.splice(0, page.length, ...page);
  loom.themes.splice(0, themes.length, ...themes);
  return cost;
}

function weaveRound(loom: Loom, strictness: number): void {
  const { blocks } = loom.task;
  let cost = loomCost(loom, strictness);
  for (let index = 0; index < blocks.length; index += 1) {
    const gap = gapAt(loom, index, 0, strictness);
    for (let i = 0; i < THEMES; i += 1) {
      const theme = i === 0 ? figureOrTheme(loom, gap) : themeFor(loom, gap);
      cost = attempt(loom, cost, strictness, () => put(loom, gap, theme));
    }
    if (index === 0) cost = attempt(loom, cost, strictness, () => put(loom, gap, easyTheme(loom)));
    if (index + 1 < blocks.length) {
      cost = attempt(loom, cost, strictness, () => putTwo(loom, index, strictness));
    }
  }
}

/** How far up the candidates the theme of a first block may lie, in lines of the page. */
const EASIEST = 0.5;

/** A theme among the easiest bars. */
function easyTheme({ task, page, random }: Loom): PageBar | null {
  const most = Math.min(task.candidates.length, Math.ceil(EASIEST * page.length));
  return task.candidates[random.below(most)] ?? null;
}

/** Share of the blocks whose theme is planned to be a figure, as far as there are figures. */
const PLANNED_FIGURES = { roomy: 0.6, tight: 0.3 } as const;

/** Plans tried for a page; the best one is woven on. */
const PLANS = { roomy: 2, tight: 5 } as const;

/** Figures of which none is a step from another: the themes that quote all of them. */
function figureThemes(loom: Loom): readonly PageBar[] {
  const themes: PageBar[] = [];
  for (const figure of loom.task.figures) {
    const near = themes.some((theme) => likeness(figure.cells, theme.cells).apart <= 1);
    if (!near) themes.push(figure);
  }
  return themes;
}

/** A theme for every block, in ascending order of points: figures first, the rest drawn evenly above the easiest. */
function planThemes(loom: Loom): readonly PageBar[] {
  const { task, random } = loom;
  const { blocks, candidates } = task;
  const share = task.isTight ? PLANNED_FIGURES.tight : PLANNED_FIGURES.roomy;
  const planned = new Set(figureThemes(loom).slice(0, Math.ceil(share * blocks.length)));
  const left = blocks.length - planned.size;
  const [least, most] = task.aim.range;
  for (let i = 0; i < left; i += 1) {
    const points = least + (most - least) * ((i + (i === 0 ? 0.1 : 0.3) + 0.6 * random.next()) / left);
    const at = Math.min(candidates.length - 1, firstAtLeast(candidates, points));
    planned.add(candidates[at] as PageBar);
  }
  return [...planned].sort((a, b) => a.points - b.points);
}

/** Lays a page out by a plan. @returns whether every block could be put. */
function layPlan(loom: Loom): boolean {
  const { task, page } = loom;
  const themes = planThemes(loom);
  if (themes.length < task.blocks.length) return false;
  const used = new Set<PageBar>(themes);
  let least = Number.NEGATIVE_INFINITY;
  return task.blocks.every((block, index) => {
    const theme = themes[index] as PageBar;
    const gap = gapAt(loom, index, 0, 0);
    used.delete(theme);
    const most = themes[index + 1]?.points ?? Number.POSITIVE_INFINITY;
    if (!put(loom, { ...gap, least, most, used: new Set(used) }, theme)) return false;
    for (const bar of page.slice(block.start, block.start + block.length)) used.add(bar);
    least = page[block.start + block.length - 1]?.points ?? least;
    return true;
  });
}

function planPage(loom: Loom): void {
  const strictness = ROUNDS[0];
  if (loom.task.places.size < loom.page.length) return;
  let cost = Number.POSITIVE_INFINITY;
  const plans = loom.task.isTight ? PLANS.tight : PLANS.roomy;
  for (let i = 0; i < plans; i += 1) cost = attempt(loom, cost, strictness, () => layPlan(loom));
}

/** Whether the page lacks a move or a figure. */
function lacks({ page, task }: Loom): boolean {
  const met = new Set(page.flatMap((bar) => bar.moves));
  const keys = new Set(page.map((bar) => bar.key));
  return task.aim.moves.some((move) => !met.has(move)) || [...task.aim.figures].some((key) => !keys.has(key));
}

/** Exchanges of single bars tried for each move that is missing after weaving. */
const PATCHES = 150;

/** Bars looked at for one exchange. */
const PATCH_BARS = 10;

/** Exchanges one bar, not a theme, for one that has a missing move. @returns whether there was one. */
function patch(loom: Loom, move: number, byMove: ReadonlyMap<number, readonly number[]>): boolean {
  const { page, task, random, themes } = loom;
  const place = random.below(page.length);
  const block = task.aim.blockOf[place] as number;
  const old = page[place] as PageBar;
  if (!task.places.has(place) || themes[block] === old) return false;
  const list = byMove.get(move) ?? [];
  const least = firstAtLeast(task.candidates, page[place - 1]?.points ?? Number.NEGATIVE_INFINITY);
  const most = firstAtLeast(task.candidates, (page[place + 1]?.points ?? Number.MAX_VALUE) + SAME_POINTS);
  const from = firstIndexAtLeast(list, least);
  const choices = firstIndexAtLeast(list, most) - from;
  let best: PageBar | null = null;
  let cost = Number.POSITIVE_INFINITY;
  for (let i = 0; i < PATCH_BARS && choices > 0; i += 1) {
    const bar = task.candidates[list[from + random.below(choices)] as number] as PageBar;
    if (page.includes(bar)) continue;
    page[place] = bar;
    const sum = loomCost(loom, 1);
    if (sum < cost) {
      best = bar;
      cost = sum;
    }
  }
  page[place] = best ?? old;
  return best !== null;
}

/**
 * Takes a line out and puts a figure in where its difficulty belongs; the lines between move up or down by one.
 * @returns whether the line may go.
 */
function quote(loom: Loom, figure: PageBar, place: number): boolean {
  const { page, task } = loom;
  if (task.places.size < page.length || task.aim.figures.has((page[place] as PageBar).key)) return false;
  page.splice(place, 1);
  const at = page.findIndex((bar) => bar.points > figure.points);
  page.splice(at < 0 ? page.length : at, 0, figure);
  return true;
}

/** Quotes figures that are still missing where that costs least. @returns whether any was missing. */
function quoteFigures(loom: Loom): boolean {
  const missing = loom.task.figures.filter((figure) => !loom.page.includes(figure));
  for (const figure of missing) {
    const page = [...loom.page];
    let best = loom.page;
    let least = Number.POSITIVE_INFINITY;
    for (let place = 0; place < page.length; place += 1) {
      const cost = quote(loom, figure, place) ? loomCost(loom, 1) : Number.POSITIVE_INFINITY;
      if (cost < least) {
        best = [...loom.page];
        least = cost;
      }
      loom.page.splice(0, page.length, ...page);
    }
    loom.page.splice(0, page.length, ...best);
  }
  return missing.length > 0;
}

/** Exchanges single bars until every move is met, or tries are spent. @returns whether any move was missing. */
function patchPage(loom: Loom): boolean {
  const byMove = candidatesByMove(loom.task.candidates);
  const missing = () => {
    const met = new Set(loom.page.flatMap((bar) => bar.moves));
    return loom.task.aim.moves.filter((move) => !met.has(move));
  };
  let moves = missing();
  let patched = false;
  let cost = loomCost(loom, 1);
  for (let tries = PATCHES * moves.length; tries > 0 && moves.length > 0; tries -= 1) {
    const move = moves[loom.random.below(moves.length)] as number;
    const after = attempt(loom, cost, 1, () => patch(loom, move, byMove));
    if (after < cost) moves = missing();
    cost = after;
    patched = true;
  }
  return patched;
}

/** Exchanges of single lines tried for each place, and once more where moves had to be patched in. */
const REFINEMENTS = 4;
const PATCHED_REFINEMENTS = 24;

/** Rounds of weaving after moves had to be patched in. */
const PATCHED_ROUNDS = 6;

/** Exchanges one line, not the theme, for another one step from the theme. @returns whether there was one. */
function refine(loom: Loom): boolean {
  const { page, task, random, themes } = loom;
  const place = random.below(page.length);
  const theme = themes[task.aim.blockOf[place] as number];
  if (!theme || !task.places.has(place) || page[place] === theme) return false;
  const least = (page[place - 1]?.points ?? Number.NEGATIVE_INFINITY) - SAME_POINTS;
  const most = (page[place + 1]?.points ?? Number.POSITIVE_INFINITY) + SAME_POINTS;
  const family = task.store
    .family(theme)
    .filter(({ bar }) => bar.points >= least && bar.points <= most && !page.includes(bar));
  const choice = family[random.below(Math.max(1, family.length))];
  if (choice) page[place] = choice.bar;
  return choice !== undefined;
}

function refinePage(loom: Loom, tries: number): void {
  let cost = loomCost(loom, 1);
  for (let i = 0; i < tries; i += 1) cost = attempt(loom, cost, 1, () => refine(loom));
}

/** Beats on which lines differ from a theme, all together. */
function strayedFrom(theme: PageBar, lines: readonly PageBar[]): number {
  return lines.reduce((sum, bar) => sum + likeness(bar.cells, theme.cells).apart, 0);
}

/** The theme of a block's lines: the one it was woven with, where no other line is nearer to them all. */
function themeOf(woven: PageBar | null, lines: readonly PageBar[]): PageBar | null {
  const found = mostAlike(lines);
  if (!found || lines.length < 2) return null;
  const theme =
    woven && lines.includes(woven) && strayedFrom(woven, lines) <= strayedFrom(found, lines) ? woven : found;
  const near = lines.every((bar) => likeness(bar.cells, theme.cells).apart <= bar.cells.length / 2);
  return near || woven ? theme : null;
}

/** The theme of every block, given the themes that it was woven with. */
export function themesOf(
  page: readonly PageBar[],
  blocks: readonly Block[],
  woven: readonly (PageBar | null)[],
): readonly (PageBar | null)[] {
  return blocks.map(({ start, length }, i) => themeOf(woven[i] ?? null, page.slice(start, start + length)));
}

/** A page woven from one that meets its moves. */
export function weavePage(start: readonly PageBar[], task: WeaveTask, random: Random): WovenPage {
  const wanted = new Uint8Array(task.aim.alphabet.vocabulary ** 2);
  for (const move of task.aim.moves) wanted[move] = 1;
  const themes = task.blocks.map(() => null);
  const loom: Loom = { task, random, page: [...start], themes, costOf: wholeCost(task.aim), wanted };
  planPage(loom);
  for (const strictness of task.isTight ? TIGHT_ROUNDS : ROUNDS) weaveRound(loom, strictness);
  for (let i = 0; i < EXTRA_ROUNDS && lacks(loom); i += 1) weaveRound(loom, 1);
  const quoted = quoteFigures(loom);
  const patched = patchPage(loom) || quoted;
  for (let i = 0; i < PATCHED_ROUNDS && patched; i += 1) weaveRound(loom, 1);
  refinePage(loom, (patched ? PATCHED_REFINEMENTS : REFINEMENTS) * task.places.size);
  return { bars: loom.page, themes: themesOf(loom.page, task.blocks, loom.themes) };
}
