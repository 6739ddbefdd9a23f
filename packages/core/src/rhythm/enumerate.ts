/**
 * Every pattern that a vocabulary of cells can write within limits: counted without listing, picked by number,
 * or listed one after another.
 *
 * Conventions: a pattern is the cells of all its beats as indices into the vocabulary, bar after bar. It loops:
 * the move from its last beat leads to its first. Strokes and silent beats are limited bar by bar. Counts are
 * exact (BigInt). Patterns are in the order of their indices.
 * Source: the transfer-matrix method, R. Stanley, Enumerative Combinatorics I, section 4.7, with the strokes and
 * rests of the bar so far carried along.
 */
import { type Cell, isRest, struckSlots } from './cell.ts';

/** A least and a greatest number; `most` null is no limit. */
export interface AmountLimit {
  /** Least number. */
  readonly least: number;
  /** Greatest number, or null. */
  readonly most: number | null;
}

/** Which patterns are meant. */
export interface PatternRules {
  readonly cells: readonly Cell[];
  /** Beats in a bar. */
  readonly beats: number;
  readonly bars: number;
  /** Whether a cell (by index) may stand on a beat, counted from 0 through all bars. */
  readonly allows?: (beat: number, cell: number) => boolean;
  /** Whether a cell may follow another; `beat` is that of the first of the two. */
  readonly allowsMove?: (beat: number, from: number, to: number) => boolean;
  /** Strokes in a bar. */
  readonly strokes?: AmountLimit;
  /** Silent beats in a bar. */
  readonly rests?: AmountLimit;
}

/** Rules made ready for counting and picking. */
export interface PatternCounter {
  /** How many patterns there are; exact. */
  readonly total: bigint;
  /** The pattern with a number from 0. @throws RangeError outside 0 ≤ index < total. */
  at(index: bigint): readonly number[];
}

const NO_LIMIT: AmountLimit = { least: 0, most: null };

/** A tally that is carried only as far as its limit can still tell a difference. */
interface Tally {
  readonly sizes: readonly number[];
  readonly cap: number;
  readonly limit: AmountLimit;
}

function tallyOf(limit: AmountLimit, sizes: readonly number[]): Tally {
  return { sizes, limit, cap: limit.most === null ? limit.least : limit.most + 1 };
}

function addTo(tally: Tally, value: number, cell: number): number {
  return Math.min(tally.cap, value + (tally.sizes[cell] ?? 0));
}

function isWithin(limit: AmountLimit, value: number): boolean {
  return value >= limit.least && (limit.most === null || value <= limit.most);
}

interface Walk {
  readonly rules: PatternRules;
  readonly length: number;
  readonly strokes: Tally;
  readonly rests: Tally;
}

function walkOf(rules: PatternRules): Walk {
  const { cells } = rules;
  return {
    rules,
    length: rules.beats * rules.bars,
    strokes: tallyOf(
      rules.strokes ?? NO_LIMIT,
      cells.map((each) => struckSlots(each).length),
    ),
    rests: tallyOf(
      rules.rests ?? NO_LIMIT,
      cells.map((each) => (isRest(each) ? 1 : 0)),
    ),
  };
}

/** Where a walk through the beats has come to: the last cell and what its bar holds so far. */
interface WalkState {
  readonly first: number;
  readonly cell: number;
  readonly strokes: number;
  readonly rests: number;
}

function canStand(walk: Walk, beat: number, cell: number): boolean {
  return walk.rules.allows?.(beat, cell) ?? true;
}

function canMove(walk: Walk, beat: number, from: number, to: number): boolean {
  return walk.rules.allowsMove?.(beat, from, to) ?? true;
}

/** The state after `cell` is put on `beat`, or null when a limit of the bar is broken by it. */
function enter(walk: Walk, before: WalkState | null, beat: number, cell: number): WalkState | null {
  if (!canStand(walk, beat, cell)) return null;
  if (before && !canMove(walk, beat - 1, before.cell, cell)) return null;
  const { beats } = walk.rules;
  const fresh = before === null || beat % beats === 0;
  const strokes = addTo(walk.strokes, fresh ? 0 : before.strokes, cell);
  const rests = addTo(walk.rests, fresh ? 0 : before.rests, cell);
  const full = (tally: Tally, value: number) => tally.limit.most !== null && value > tally.limit.most;
  if (full(walk.strokes, strokes) || full(walk.rests, rests)) return null;
  const ends = beat % beats === beats - 1;
  if (ends && !(isWithin(walk.strokes.limit, strokes) && isWithin(walk.rests.limit, rests))) return null;
  const first = before?.first ?? cell;
  if (beat === walk.length - 1 && !canMove(walk, beat, cell, first)) return null;
  return { first, cell, strokes, rests };
}

/** Prepares counting for rules. */
export function createPatternCounter(rules: PatternRules): PatternCounter {
  const walk = walkOf(rules);
  const memo = new Map<string, bigint>();
  const waysAfter = (state: WalkState | null, beat: number): bigint => {
    if (beat === walk.length) return 1n;
    const key = state ? `${beat} ${state.first} ${state.cell} ${state.strokes} ${state.rests}` : '';
    const known = memo.get(key);
    if (known !== undefined) return known;
    let ways = 0n;
    for (let cell = 0; cell < rules.cells.length; cell += 1) {
      const next = enter(walk, state, beat, cell);
      if (next) ways += waysAfter(next, beat + 1);
    }
    memo.set(key, ways);
    return ways;
  };
  const total = waysAfter(null, 0);
  return { total, at: (index) => pickPattern(walk, waysAfter, total, index) };
}

function pickPattern(
  walk: Walk,
  waysAfter: (state: WalkState | null, beat: number) => bigint,
  total: bigint,
  index: bigint,
): readonly number[] {
  if (index < 0n || index >= total) {
    throw new RangeError(`Internal error: there is no pattern ${index} of ${total}`);
  }
  const picked: number[] = [];
  let state: WalkState | null = null;
  let rest = index;
  for (let beat = 0; beat < walk.length; beat += 1) {
    for (let cell = 0; cell < walk.rules.cells.length; cell += 1) {
      const next = enter(walk, state, beat, cell);
      if (!next) continue;
      const ways = waysAfter(next, beat + 1);
      if (rest < ways) {
        picked.push(cell);
        state = next;
        break;
      }
      rest -= ways;
    }
  }
  return picked;
}

/** How many patterns the rules allow; exact, without listing them. */
export function countPatterns(rules: PatternRules): bigint {
  return createPatternCounter(rules).total;
}

/** Every pattern the rules allow, in order; lists lazily, so memory stays flat. */
export function* listPatterns(rules: PatternRules): Generator<readonly number[]> {
  const walk = walkOf(rules);
  const picked: number[] = [];
  const extend = function* (state: WalkState | null): Generator<readonly number[]> {
    if (picked.length === walk.length) {
      yield [...picked];
      return;
    }
    for (let cell = 0; cell < rules.cells.length; cell += 1) {
      const next = enter(walk, state, picked.length, cell);
      if (!next) continue;
      picked.push(cell);
      yield* extend(next);
      picked.pop();
    }
  };
  yield* extend(null);
}

/** The moves, as `[from, to]`, that at least one allowed pattern makes. */
export function possibleMoves(rules: PatternRules): readonly (readonly [number, number])[] {
  const indices = rules.cells.map((_, i) => i);
  const pairs = indices.flatMap((from) => indices.map((to) => [from, to] as const));
  return pairs.filter(([from, to]) => makesMove(rules, from, to));
}

function makesMove(rules: PatternRules, from: number, to: number): boolean {
  const length = rules.beats * rules.bars;
  for (let beat = 0; beat < length; beat += 1) {
    const after = (beat + 1) % length;
    const allows = (at: number, cell: number) =>
      (at !== beat || cell === from) && (at !== after || cell === to) && (rules.allows?.(at, cell) ?? true);
    if (countPatterns({ ...rules, allows }) > 0n) return true;
  }
  return false;
}
