/**
 * A term: several pages that bring the vocabulary little by little and come back to every move at growing distances.
 *
 * Conventions: pages count from 0; a move that is new on one page is due on the next one, then two pages after that,
 * then four, and so on; one that a page had no room for is due on the next. Cells come in the order of the vocabulary,
 * three on the first page, the last of them when two thirds of the pages are through. No bar comes twice.
 * Source: what comes back at growing distances is kept longer than what is massed (Landauer & Bjork 1978; Cepeda,
 * Pashler, Vul, Wixted & Rohrer 2006, Psychological Bulletin 132(3)); the distances and shares are ours.
 */
import { cell, type Lesson, seededRandom } from '@shedbook/core';
import type { CellMove } from './cell-move.ts';
import { type ComposeOptions, pageSource } from './compose.ts';
import { type Composition, composePage, type PageSource } from './page.ts';
import type { Candidate } from './pool.ts';
import type { ComposeReport } from './report.ts';
import type { TermFact } from './term-fact.ts';
import { cellFact } from './theme-groups.ts';

/** Cells of the first page. */
const FIRST_CELLS = 3;

/** Share of the pages after which every cell has come. */
const ALL_CELLS_BY = 2 / 3;

/** Moves that a page sets out to meet, as a share of its beats, new ones and those that come back. */
const SHARE_OF_BEATS = 0.5;

/** What to compose. */
export interface TermOptions extends Pick<ComposeOptions, 'count' | 'seed' | 'idiom'> {
  /** Number of pages. */
  readonly pages: number;
}

/** A page of a term. */
export interface TermPage extends Composition {
  /** Number of the page, from 1. */
  readonly page: number;
  /** Cells that the term has here for the first time. */
  readonly newCells: readonly string[];
  /** Moves that the term sets out to have here for the first time, in the order of the vocabulary. */
  readonly newMoves: readonly CellMove[];
  /** Moves of earlier pages that are due here, and met. */
  readonly returning: readonly CellMove[];
  /** Moves that are due here and not met: they are due on the next page. */
  readonly postponed: readonly CellMove[];
}

/** How a move stands: on which page it comes next, and how many pages that is after the last time. */
interface Due {
  readonly on: number;
  readonly gap: number;
}

/** A term on its way. */
interface Term {
  readonly source: PageSource;
  readonly pages: number;
  /** Moves that have come so far, as indices `from · cells + to`. */
  readonly brought: Map<number, Due>;
  /** Bars of earlier pages, as their cells. */
  readonly taken: Set<string>;
}

/** How many cells of the vocabulary a page has. */
function cellsBy(page: number, pages: number, all: number): number {
  if (page < 0) return 0;
  const least = Math.min(FIRST_CELLS, all);
  const last = Math.max(1, Math.ceil(pages * ALL_CELLS_BY) - 1);
  return pages === 1 ? all : Math.min(all, Math.round(least + ((all - least) * page) / last));
}

function movesOf({ cells: bar }: Candidate, cells: number): readonly number[] {
  return Array.from(bar, (cell, beat) => cell * cells + (bar[(beat + 1) % bar.length] as number));
}

/** Moves that a page brings: of the cells that it has, as many as there is room for beside those that are due. */
function freshMoves({ source, pages, brought }: Term, page: number, due: number): readonly number[] {
  const n = source.rules.cells.length;
  const known = cellsBy(page, pages, n);
  const room = Math.floor(source.count * source.ground.length * SHARE_OF_BEATS) - due;
  const latest = (move: number) => Math.max(Math.floor(move / n), move % n);
  const possible = new Set(source.pool.candidates.flatMap((bar) => movesOf(bar, n)));
  return [...possible]
    .filter((move) => !brought.has(move) && latest(move) < known)
    .sort((a, b) => latest(a) - latest(b) || a - b)
    .slice(0, Math.max(0, room));
}

/** The source of a page: bars that are new and have no move that has not come yet. */
function sourceOf({ source, brought, taken }: Term, moves: readonly number[], seed: string): PageSource {
  const n = source.rules.cells.length;
  const fits = (bar: Candidate) =>
    !taken.has(bar.cells.join()) && movesOf(bar, n).every((move) => brought.has(move));
  const grade = (cells: Uint16Array) => {
    const bar = source.pool.grade(cells);
    return bar && fits(bar) ? bar : null;
  };
  const pool = { ...source.pool, candidates: source.pool.candidates.filter(fits), grade };
  const pairs = moves.map((move) => [Math.floor(move / n), move % n] as const);
  return { ...source, pool, moves: pairs, seed, random: seededRandom(seed) };
}

function textMoves({ bars }: ComposeReport): ReadonlySet<string> {
  return new Set(
    bars.flatMap(({ text }) => {
      const cells = text.split(' ');
      return cells.map((from, beat) => `${from} ${cells[(beat + 1) % cells.length]}`);
    }),
  );
}

function nextPage(term: Term, page: number): TermPage {
  const { source, brought, taken, pages } = term;
  const texts = source.rules.cells.map((cell) => cell.text);
  const n = texts.length;
  const due = [...brought].filter(([, { on }]) => on <= page).map(([move]) => move);
  const fresh = freshMoves(term, page, due.length);
  for (const move of fresh) brought.set(move, { on: page + 1, gap: 1 });
  const { exercises, report } = composePage(sourceOf(term, [...due, ...fresh], `${source.seed} ${page}`));
  const moveText = (move: number): CellMove => ({
    from: texts[Math.floor(move / n)] as string,
    to: texts[move % n] as string,
  });
  const met = textMoves(report);
  const isMet = (move: number) => met.has(`${moveText(move).from} ${moveText(move).to}`);
  for (const move of due.filter(isMet)) {
    const gap = 2 * (brought.get(move) as Due).gap;
    brought.set(move, { on: page + gap, gap });
  }
  for (const { text } of report.bars)
    taken.add(Array.from(text.split(' '), (cell) => texts.indexOf(cell)).join());
  return {
    page: page + 1,
    exercises,
    report,
    newCells: texts.slice(cellsBy(page - 1, pages, n), cellsBy(page, pages, n)),
    newMoves: fresh.map(moveText),
    returning: due.filter(isMet).map(moveText),
    postponed: due.filter((move) => !isMet(move)).map(moveText),
  };
}

/** Composes a term for a lesson; what the lesson itself has written stays out of it. */
export function composeTerm(lesson: Lesson, options: TermOptions): readonly TermPage[] {
  const source = { ...pageSource({ ...lesson, exercises: [] }, { ...options, bars: 1 }), keep: [] };
  const term: Term = { source, pages: options.pages, brought: new Map(), taken: new Set() };
  return Array.from({ length: options.pages }, (_, page) => nextPage(term, page)).filter(
    ({ exercises }) => exercises.length > 0,
  );
}

/** What there is to say of a page: its cells, its new moves, and what comes back. */
export function termFacts({ newCells, newMoves, returning }: TermPage): readonly TermFact[] {
  return [
    ...(newCells.length > 0
      ? [{ fact: 'term-cells', cells: newCells.map((text) => cellFact(cell(text))) } as const]
      : []),
    ...(newMoves.length > 0 ? [{ fact: 'term-new-moves', moves: newMoves.length } as const] : []),
    ...(returning.length > 0 ? [{ fact: 'term-moves-back', moves: returning.length } as const] : []),
  ];
}
