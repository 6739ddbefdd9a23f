/**
 * Where pages end: the best breaks over the whole lesson, rather than each page as full as it goes.
 *
 * Conventions: millimetres; a page is a run of blocks, the gap over its first one left out. Rows of exercises may stand
 * a little closer or wider than they are, so that a page is full without another breaking badly.
 * Source: the shortest path over all breaks, after D. E. Knuth and M. F. Plass, Breaking Paragraphs into Lines, Software:
 * Practice and Experience 11 (1981). The costs are ours.
 */
import type { FlowBlock } from './context.ts';

/** The blocks from `from` up to `to` on one page, and what is added over each row of exercises. */
export interface PagePlan {
  /** Index of its first block. */
  readonly from: number;
  /** Index after its last block. */
  readonly to: number;
  /** Below 0 where rows move together. */
  readonly spreadMm: number;
}

/** What pages are made for. */
export interface PageRoom {
  readonly heightMm: number;
  /** Exercises that each page has, all but the last; null for as many as go well. */
  readonly perPage: number | null;
}

/** A page less full than six tenths looks unfinished; a block may be a hundredth of a page higher than its ink. */
const FULL_SHARE = 0.61;

/** Fewer exercises than this on a page of their own look lost. */
const FEWEST_EXERCISES = 3;

/** How far rows of exercises may move together, and apart. */
const CLOSER_MM = 1.6;
const WIDER_MM = 5;

/** A last page less full than this could have had more. */
const SCANT_SHARE = 0.35;

/** Costs: of a page, of white on it, of rows that move together, of what should not be. */
const COST = {
  page: 10,
  white: 100,
  closer: 40,
  lone: 500,
  hollow: 1000,
  severed: 20,
  parted: 120,
  torn: 40,
  divided: 15,
  sundered: 60,
  widow: 60,
  scant: 30,
  burst: 1e6,
} as const;

/** Whether a block is a row of exercises. */
export function isRow({ places }: FlowBlock): boolean {
  return (places?.length ?? 0) > 0;
}

/** Exercises that begin in a block. */
function beginsIn({ places = [] }: FlowBlock): number {
  return places.filter(({ opens }) => opens).length;
}

interface Filling {
  readonly heightMm: number;
  /** Rows of exercises under the first block. */
  readonly rows: number;
  readonly exercises: number;
  /** Whether it has rows of exercises and nothing else. */
  readonly isRows: boolean;
}

const EMPTY: Filling = { heightMm: 0, rows: 0, exercises: 0, isRows: true };

function withBlock(page: Filling, block: FlowBlock, isFirst: boolean): Filling {
  return {
    heightMm: page.heightMm + block.heightMm + (isFirst ? 0 : block.gapMm),
    rows: page.rows + (isRow(block) && !isFirst ? 1 : 0),
    exercises: page.exercises + beginsIn(block),
    isRows: page.isRows && isRow(block),
  };
}

/** What a page costs; null where it cannot be. */
function costOf(
  page: Filling,
  { heightMm, perPage }: PageRoom,
  {
    isOne,
    isFirst,
    isLast,
  }: { readonly isOne: boolean; readonly isFirst: boolean; readonly isLast: boolean },
): number | null {
  const over = page.heightMm - heightMm;
  if (over > page.rows * CLOSER_MM) return isOne ? COST.burst : null;
  if (perPage !== null && (isLast ? page.exercises > perPage : page.exercises !== perPage)) return null;
  const full = Math.min(1, page.heightMm / heightMm);
  const scant = isFirst ? 0 : COST.scant * Math.max(0, SCANT_SHARE - full);
  const white = isLast ? scant : COST.white * (1 - full) ** 2;
  const hollow = isLast || full >= FULL_SHARE ? 0 : COST.hollow * (1 + FULL_SHARE - full);
  const isLost = perPage === null && !isFirst && page.isRows && page.exercises < FEWEST_EXERCISES;
  const closer = over > 0 ? COST.closer * (over / (page.rows * CLOSER_MM)) ** 2 : 0;
  return COST.page + white + hollow + closer + (isLost ? COST.lone : 0);
}

/** What it costs to break before a block. */
function breakCost(blocks: readonly FlowBlock[], at: number): number {
  if (blocks[at - 1]?.keepsNext) return COST.hollow * 10;
  const [before, after] = [blocks[at - 1], blocks[at]] as readonly [FlowBlock, FlowBlock];
  const parted = !isRow(before) && isRow(after) ? COST.parted : 0;
  const severed = blocks[at - 2] && !isRow(blocks[at - 2] as FlowBlock) && isRow(before) ? COST.severed : 0;
  const torn = isRow(after) && beginsIn(after) === 0 ? COST.torn : 0;
  const divided = after.goesOn ? COST.divided : after.belongs ? COST.sundered : 0;
  const next = blocks[at + 1];
  return (
    torn +
    divided +
    parted +
    severed +
    (isRow(after) && next && !isRow(next) && beginsIn(after) < 2 ? COST.widow : 0)
  );
}

interface Best {
  readonly cost: number;
  readonly from: number;
  readonly page: Filling;
}

/** The best last page of all ways to set the blocks up to `to`. */
function bestPage(blocks: readonly FlowBlock[], room: PageRoom, to: number, best: readonly (Best | null)[]) {
  let found: Best | null = null;
  for (let from = to - 1; from >= 0; from -= 1) {
    const page = blocks.slice(from, to).reduce((sum, block, i) => withBlock(sum, block, i === 0), EMPTY);
    const ends = { isOne: to - from === 1, isFirst: from === 0, isLast: to === blocks.length };
    if (page.heightMm > 1.5 * room.heightMm && !ends.isOne) break;
    const before = from === 0 ? 0 : (best[from]?.cost ?? null);
    const own = costOf(page, room, ends);
    if (own === null || before === null) continue;
    const cost = before + own + (from === 0 ? 0 : breakCost(blocks, from));
    if (!found || cost < found.cost) found = { cost, from, page };
  }
  return found;
}

/** How far apart the rows of a page are moved: the last one stays as it is where it has room. */
function spreadOf({ heightMm, rows }: Filling, room: PageRoom, isLast: boolean): number {
  const left = room.heightMm - heightMm;
  if (rows === 0 || (isLast && left > 0)) return 0;
  return Math.max(-CLOSER_MM, Math.min(WIDER_MM, left / rows));
}

/** The pages, or null where no page holds as many exercises as it should. */
export function paginate(blocks: readonly FlowBlock[], room: PageRoom): readonly PagePlan[] | null {
  const best: (Best | null)[] = [null];
  for (let to = 1; to <= blocks.length; to += 1) best.push(bestPage(blocks, room, to, best));
  const pages: PagePlan[] = [];
  for (let to = blocks.length; to > 0; ) {
    const page = best[to];
    if (!page) return null;
    pages.unshift({ from: page.from, to, spreadMm: spreadOf(page.page, room, to === blocks.length) });
    to = page.from;
  }
  return pages;
}
