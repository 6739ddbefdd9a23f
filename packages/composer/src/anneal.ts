/**
 * Annealing a page: lines and whole blocks are exchanged by chance, ever more seldom for the worse.
 *
 * Conventions: difficulty never falls by an exchange; bars that stay in their places (kept ones) never move, and no bar is
 * on the page twice.
 * Source: simulated annealing (Kirkpatrick, Gelatt & Vecchi 1983, Science 220); temperatures and shares are ours, chosen
 * on seeds below 50 000.
 */
import type { Random } from '@shedbook/core';
import { type BarStore, drawBetween } from './bar-store.ts';
import { BLOCK_LINES, type Block } from './blocks.ts';
import { blockCost, count, type Loom, themeOfBlock, wholeCost } from './loom.ts';
import { type PageBar, SAME_POINTS } from './page-bar.ts';
import { firstIndexAtLeast } from './sorted.ts';
import { firstAtLeast } from './windows.ts';

/** Share of the lines of a new block that are a step from its theme, displaced or not, and not from the line before. */
const STEP_FROM_THEME = 0.4;

/** What annealing goes by. */
export interface AnnealTask {
  /** In ascending order of points. */
  readonly candidates: readonly PageBar[];
  /** Indices of the candidates that have a move, ascending, by the index of the move. */
  readonly byMove: ReadonlyMap<number, readonly number[]>;
  readonly store: BarStore;
  /** Bars that are figures to be quoted. */
  readonly figures: readonly PageBar[];
  /** Places that may change. */
  readonly places: readonly number[];
}

/** How long and how warm. */
export interface Schedule {
  /** Exchanges tried. */
  readonly tries: number;
  /** Number of points of cost that an exchange may be worse by at the start, about. */
  readonly warm: number;
  /** Number of points of cost that an exchange may be worse by in the end, about. */
  readonly cool: number;
}

/** The points that a line may have. */
interface Room {
  readonly least: number;
  readonly most: number;
}

/** Everything an exchange needs. */
interface Bench {
  readonly loom: Loom;
  readonly task: AnnealTask;
  readonly random: Random;
  /** By place: whether it may change. */
  readonly mayChange: readonly boolean[];
  readonly isAllFree: boolean;
  /** The bars of the page, as it was before the exchange that is tried. */
  readonly used: Set<PageBar>;
}

/** Whether every line of a block may change. */
function isFree({ mayChange, isAllFree }: Bench, { start, length }: Block): boolean {
  if (isAllFree) return true;
  for (let place = start; place < start + length; place += 1) if (!mayChange[place]) return false;
  return true;
}

function blockRoom({ loom }: Bench, { start, length }: Block): Room {
  const { page } = loom;
  return {
    least: (page[start - 1]?.points ?? Number.NEGATIVE_INFINITY) - SAME_POINTS,
    most: (page[start + length]?.points ?? Number.POSITIVE_INFINITY) + SAME_POINTS,
  };
}

/** The points that a new line on a place may have: in a free block it may move to where it belongs. */
function roomFor(bench: Bench, index: number, place: number): Room {
  const { page, blocks } = bench.loom;
  const block = blocks[index] as Block;
  if (isFree(bench, block)) return blockRoom(bench, block);
  return {
    least: (page[place - 1]?.points ?? Number.NEGATIVE_INFINITY) - SAME_POINTS,
    most: (page[place + 1]?.points ?? Number.POSITIVE_INFINITY) + SAME_POINTS,
  };
}

/** Puts a bar in a line's stead, where its difficulty belongs in the block; what may not change stays where it is. */
function putLine({ loom, mayChange }: Bench, index: number, place: number, bar: PageBar): void {
  const { page, blocks } = loom;
  const { start, length } = blocks[index] as Block;
  count(loom, page[place] as PageBar, -1);
  count(loom, bar, 1);
  let at = place;
  const isAbove = (other: number) =>
    other >= start && mayChange[other] === true && (page[other] as PageBar).points > bar.points;
  const isBelow = (other: number) =>
    other < start + length && mayChange[other] === true && (page[other] as PageBar).points < bar.points;
  for (; isAbove(at - 1); at -= 1) page[at] = page[at - 1] as PageBar;
  for (; isBelow(at + 1); at += 1) page[at] = page[at + 1] as PageBar;
  page[at] = bar;
}

/** A candidate with a move of the page's that the page has not, or has once. */
function drawMove({ task, random, loom }: Bench, room: Room): PageBar | null {
  const { moves } = loom.aim;
  const list = task.byMove.get(moves[random.below(Math.max(1, moves.length))] as number) ?? [];
  const from = firstIndexAtLeast(list, firstAtLeast(task.candidates, room.least));
  const choices = firstIndexAtLeast(list, firstAtLeast(task.candidates, room.most)) - from;
  return choices > 0 ? (task.candidates[list[from + random.below(choices)] as number] as PageBar) : null;
}

function drawJoin({ loom, task, random }: Bench, index: number, theme: PageBar): PageBar | null {
  const before = themeOfBlock(loom, index - 1);
  return before && task.store.joining(before, theme, random);
}

/** A bar that differs on one beat from the line before or after it in its block. */
function drawBeside({ loom, task, random }: Bench, index: number, place: number): PageBar | null {
  const { page, blocks, aim } = loom;
  const { start, length } = blocks[index] as Block;
  const beside =
    place === start || (place < start + length - 1 && random.below(2) === 0) ? place + 1 : place - 1;
  const line = page[beside] as PageBar;
  return task.store.withCell(line, random.below(line.cells.length), random.below(aim.alphabet.vocabulary));
}

/** The theme of a block some beats later, or null where it may not stand on the page. */
function drawDisplaced({ task, random }: Bench, theme: PageBar): PageBar | null {
  return task.store.displaced(theme, 1 + random.below(Math.max(1, theme.cells.length - 1)));
}

/** Where an exchange is tried. */
interface Spot {
  readonly index: number;
  readonly place: number;
}

/** Puts another line on a place. @returns whether one was found. */
function tryLine(bench: Bench, { index, place }: Spot, by: number): boolean {
  const { task, random, loom } = bench;
  const theme = themeOfBlock(loom, index);
  const room = roomFor(bench, index, place);
  let bar: PageBar | null = null;
  const { shares } = loom.gains;
  if (by >= shares.line && by < shares.move) bar = drawMove(bench, room);
  else if (theme && by < shares.beside) bar = drawBeside(bench, index, place);
  else if (!theme) bar = drawBetween(task.candidates, room.least, room.most, random);
  else if (by >= shares.join) bar = drawDisplaced(bench, theme);
  else if (by >= shares.move) bar = drawJoin(bench, index, theme);
  else bar = task.store.near(theme, room.least, room.most, random);
  if (!bar || bench.used.has(bar) || bar.points < room.least || bar.points > room.most) return false;
  putLine(bench, index, place, bar);
  return true;
}

/** A figure that the page lacks, by chance, or null. */
function drawMissingFigure({ task, used, random }: Bench): PageBar | null {
  const { figures } = task;
  const from = random.below(Math.max(1, figures.length));
  for (let i = 0; i < figures.length; i += 1) {
    const figure = figures[(from + i) % figures.length] as PageBar;
    if (!used.has(figure)) return figure;
  }
  return null;
}

/** Where a figure belongs by its difficulty: the last line that is no harder, or the one after it. */
function spotFor({ loom, random }: Bench, figure: PageBar): Spot {
  const { page, blockOf } = loom;
  let place = 0;
  while (place + 1 < page.length && (page[place + 1] as PageBar).points <= figure.points) place += 1;
  if (place + 1 < page.length && random.below(2) === 0) place += 1;
  return { index: blockOf[place] as number, place };
}

/** Puts a figure on the page, as its block's theme or as a line. @returns whether it could be. */
function putFigure(bench: Bench, { index, place }: Spot, figure: PageBar): boolean {
  const { loom, random } = bench;
  const room = roomFor(bench, index, place);
  if (figure.points < room.least || figure.points > room.most) return false;
  if (loom.isThemed && random.next() < 0.5) return rebuild(bench, index, figure);
  putLine(bench, index, place, figure);
  return true;
}

/** A line to follow others of a new block: one beat of the last changes, or its theme is a step away. */
function drawNext({ task, random, loom }: Bench, lines: readonly PageBar[], most: number): PageBar | null {
  const theme = lines[0] as PageBar;
  if (random.next() < STEP_FROM_THEME) return task.store.near(theme, theme.points, most, random);
  const last = lines.at(-1) as PageBar;
  const beat = random.below(last.cells.length);
  const bar = task.store.withCell(last, beat, random.below(loom.aim.alphabet.vocabulary));
  return bar && bar.points >= last.points - SAME_POINTS && bar.points <= most ? bar : null;
}

/** Gives a block another theme and lines of it, chosen by chance. @returns whether it could be. */
function rebuild(bench: Bench, index: number, theme: PageBar): boolean {
  const { loom } = bench;
  const block = loom.blocks[index] as Block;
  if (!isFree(bench, block)) return false;
  const room = blockRoom(bench, block);
  const lines: PageBar[] = [theme];
  for (let tries = 0; lines.length < block.length && tries < 3 * block.length; tries += 1) {
    const bar = drawNext(bench, lines, room.most);
    if (bar && !bench.used.has(bar) && !lines.includes(bar)) lines.push(bar);
  }
  if (lines.length < block.length) return false;
  lines.sort((a, b) => a.points - b.points);
  setLines(loom, index, lines);
  return true;
}

function tryBlock(bench: Bench, { index }: Spot): boolean {
  const { loom, task, random } = bench;
  if (!loom.isThemed) return false;
  const { least, most } = blockRoom(bench, loom.blocks[index] as Block);
  const theme = drawBetween(task.candidates, least, most, random);
  return theme !== null && !bench.used.has(theme) && rebuild(bench, index, theme);
}

/** Gives all lines of a block that share a beat's cell with the theme another one there. @returns whether it could be. */
function tryBeat(bench: Bench, { index }: Spot): boolean {
  const { loom, task, random, used } = bench;
  const block = loom.blocks[index] as Block;
  const theme = themeOfBlock(loom, index);
  if (!theme || !isFree(bench, block)) return false;
  const beat = random.below(theme.cells.length);
  const old = theme.cells[beat];
  const cell = random.below(loom.aim.alphabet.vocabulary);
  if (cell === old) return false;
  const { least, most } = blockRoom(bench, block);
  const lines: PageBar[] = [];
  for (let place = block.start; place < block.start + block.length; place += 1) {
    const line = loom.page[place] as PageBar;
    const other = line.cells[beat] === old ? task.store.withCell(line, beat, cell) : line;
    if (!other || other.points < least || other.points > most || lines.includes(other)) return false;
    if (other !== line && used.has(other)) return false;
    lines.push(other);
  }
  lines.sort((a, b) => a.points - b.points);
  setLines(loom, index, lines);
  return true;
}

function setLines(loom: Loom, index: number, lines: readonly PageBar[]): void {
  const { page, blocks } = loom;
  const { start, length } = blocks[index] as Block;
  for (let i = 0; i < length; i += 1) {
    const before = page[start + i] as PageBar;
    const line = lines[i] as PageBar;
    if (before === line) continue;
    count(loom, before, -1);
    count(loom, line, 1);
    page[start + i] = line;
  }
}

/** What an exchange is: where, which kind, and, where one is to be put on the page, which figure. */
interface Attempt {
  readonly spot: Spot;
  readonly by: number;
  readonly figure: PageBar | null;
}

/** The exchange to be tried: a missing figure goes where it belongs. */
function attemptAt(bench: Bench, spot: Spot): Attempt {
  const by = bench.random.next();
  const figure =
    by >= bench.loom.gains.shares.displaced && by < bench.loom.gains.shares.figure
      ? drawMissingFigure(bench)
      : null;
  const belongs = figure ? spotFor(bench, figure) : spot;
  return bench.mayChange[belongs.place] ? { spot: belongs, by, figure } : { spot, by, figure };
}

function act(bench: Bench, { spot, by, figure }: Attempt): boolean {
  const { shares } = bench.loom.gains;
  if (by < shares.displaced) return tryLine(bench, spot, by);
  if (by < shares.figure) return figure !== null && putFigure(bench, spot, figure);
  return by < shares.beat ? tryBeat(bench, spot) : tryBlock(bench, spot);
}

/** Moves the end of a block by a line. @returns whether both blocks still have as many lines as a block has. */
function moveEnd({ blocks, blockOf }: Loom, index: number, by: 1 | -1): boolean {
  const own = blocks[index] as Block;
  const next = blocks[index + 1];
  if (!next) return false;
  const [longer, shorter] = by === 1 ? [own, next] : [next, own];
  if (longer.length >= BLOCK_LINES.most || shorter.length <= BLOCK_LINES.least) return false;
  blocks[index] = { start: own.start, length: own.length + by };
  blocks[index + 1] = { start: next.start + by, length: next.length - by };
  if (by === 1) blockOf[next.start] = index;
  else blockOf[next.start - 1] = index + 1;
  return true;
}

/** What a search has in hand: costs of the blocks and of the whole page. */
interface Ledger {
  readonly costs: Float64Array;
  whole: number;
  heat: number;
}

function openLedger(loom: Loom, heat: number): Ledger {
  const costs = Float64Array.from(loom.blocks, (_, index) => blockCost(loom, index));
  return { costs, whole: wholeCost(loom), heat };
}

function isTaken(worse: number, { heat }: Ledger, random: Random): boolean {
  return worse <= 0 || random.next() < Math.exp(-worse / heat);
}

function tryEnd({ loom, random }: Bench, ledger: Ledger, index: number): void {
  const by = random.below(2) === 0 ? 1 : -1;
  if (!loom.isThemed || index + 1 >= loom.blocks.length) return;
  // the block after the next one may join another theme then
  const touched = [index, index + 1, index + 2].filter((each) => each < loom.blocks.length);
  const before = touched.reduce((sum, each) => sum + (ledger.costs[each] as number), ledger.whole);
  if (!moveEnd(loom, index, by)) return;
  const { changed } = loom.tally;
  const changedBefore = touched.map((each) => changed[each] as number);
  const costs = touched.map((each) => blockCost(loom, each));
  const whole = wholeCost(loom);
  const after = costs.reduce((sum, each) => sum + each, whole);
  if (isTaken(after - before, ledger, random)) {
    ledger.costs.set(costs, index);
    ledger.whole = whole;
    return;
  }
  moveEnd(loom, index, by === 1 ? -1 : 1);
  changed.set(changedBefore, index);
}

function tryLines(bench: Bench, ledger: Ledger, spot: Spot, lines: PageBar[]): void {
  const { loom, random, used } = bench;
  const { page, blocks } = loom;
  const attempt = attemptAt(bench, spot);
  const { index } = attempt.spot;
  const { start, length } = blocks[index] as Block;
  for (let line = 0; line < length; line += 1) lines[line] = page[start + line] as PageBar;
  const own = ledger.costs[index] as number;
  const next = ledger.costs[index + 1] ?? 0;
  const changed = loom.tally.changed[index] as number;
  if (!act(bench, attempt)) return;
  const cost = blockCost(loom, index);
  const isNextOther =
    index + 1 < blocks.length && (page[start] !== lines[0] || page[start + length - 1] !== lines[length - 1]);
  const nextCost = isNextOther ? blockCost(loom, index + 1) : next;
  const whole = wholeCost(loom);
  if (isTaken(whole - ledger.whole + cost + nextCost - own - next, ledger, random)) {
    ledger.whole = whole;
    ledger.costs[index] = cost;
    if (isNextOther) ledger.costs[index + 1] = nextCost;
    for (let line = 0; line < length; line += 1) used.delete(lines[line] as PageBar);
    for (let line = start; line < start + length; line += 1) used.add(page[line] as PageBar);
    return;
  }
  setLines(loom, index, lines);
  loom.tally.changed[index] = changed;
}

/** Lays the blocks end to end again, after their lengths have changed. */
function layBlocks({ blocks, blockOf }: Loom, lengths: readonly number[]): void {
  let start = 0;
  lengths.forEach((length, index) => {
    const block = blocks[index] as Block;
    if (block.start !== start || block.length !== length) blocks[index] = { start, length };
    blockOf.fill(index, start, start + length);
    start += length;
  });
}

function takeLine(loom: Loom, place: number): PageBar {
  const [bar] = loom.page.splice(place, 1) as [PageBar];
  count(loom, bar, -1);
  return bar;
}

function addLine(loom: Loom, place: number, bar: PageBar): void {
  loom.page.splice(place, 0, bar);
  count(loom, bar, 1);
}

/** A bar that a block may take up as one line more: a figure that is missing, or a line of its theme. */
function drawGuest(bench: Bench, index: number, theme: PageBar): PageBar | null {
  const { loom, task, random, used } = bench;
  const { least, most } = blockRoom(bench, loom.blocks[index] as Block);
  const bar = drawMissingFigure(bench) ?? task.store.near(theme, least, most, random);
  return bar && !used.has(bar) && bar.points >= least && bar.points <= most ? bar : null;
}

/** Takes a line out of one block and gives another block one line more. */
function tryTransfer(bench: Bench, ledger: Ledger, { index, place }: Spot): void {
  const { loom, random, used } = bench;
  const { blocks, page } = loom;
  const other = random.below(blocks.length);
  const theme = themeOfBlock(loom, other);
  if (!bench.isAllFree || !theme || other === index) return;
  const [giver, taker] = [blocks[index] as Block, blocks[other] as Block];
  if (giver.length <= BLOCK_LINES.least || taker.length >= BLOCK_LINES.most) return;
  const guest = drawGuest(bench, other, theme);
  if (!guest) return;
  const before = ledger.costs.reduce((sum, cost) => sum + cost, ledger.whole);
  const changed = loom.tally.changed.slice();
  const left = takeLine(loom, place);
  const lengths = blocks.map(({ length }) => length);
  lengths[index] = giver.length - 1;
  layBlocks(loom, lengths);
  const block = blocks[other] as Block;
  let at = block.start;
  while (at < block.start + block.length && (page[at] as PageBar).points < guest.points) at += 1;
  addLine(loom, at, guest);
  lengths[other] = taker.length + 1;
  layBlocks(loom, lengths);
  // each block by itself, and the one after it, which may join its theme
  const costs = ledger.costs.slice();
  for (const each of [index, index + 1, other, other + 1])
    if (each < blocks.length) costs[each] = blockCost(loom, each);
  const whole = wholeCost(loom);
  const after = costs.reduce((sum, each) => sum + each, whole);
  if (isTaken(after - before, ledger, random)) {
    ledger.whole = whole;
    ledger.costs.set(costs);
    used.delete(left);
    used.add(guest);
    return;
  }
  takeLine(loom, at);
  addLine(loom, place, left);
  lengths[index] = giver.length;
  lengths[other] = taker.length;
  layBlocks(loom, lengths);
  loom.tally.changed.set(changed);
}

/** Shares of the tries that move where a block ends, and that take a line from one block to another. */
const SHARES_OF_BLOCKS = { end: 0.08, transfer: 0.22 } as const;

/** Exchanges lines, themes and blocks of a page; the page and its blocks are changed in place. */
export function anneal(loom: Loom, task: AnnealTask, schedule: Schedule, random: Random): void {
  const mayChange = loom.page.map((_, place) => task.places.includes(place));
  const isAllFree = mayChange.every(Boolean);
  const bench: Bench = { loom, task, random, mayChange, isAllFree, used: new Set(loom.page) };
  const cooling = (schedule.cool / schedule.warm) ** (1 / Math.max(1, schedule.tries));
  const ledger = openLedger(loom, schedule.warm);
  const lines: PageBar[] = [];
  for (let i = 0; i < schedule.tries; i += 1) {
    ledger.heat *= cooling;
    const place = task.places[random.below(task.places.length)] as number;
    const index = loom.blockOf[place] as number;
    const by = random.next();
    if (by < SHARES_OF_BLOCKS.end) tryEnd(bench, ledger, index);
    else if (by < SHARES_OF_BLOCKS.transfer) tryTransfer(bench, ledger, { index, place });
    else tryLines(bench, ledger, { index, place }, lines);
  }
}
