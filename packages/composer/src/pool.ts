/**
 * The bars that a page is chosen from: all that the limits allow, or, where they are too many, a sample that
 * reaches evenly from the easiest to the hardest.
 *
 * Conventions: candidates are in ascending order of points, then of cells.
 */
import {
  createPatternCounter,
  listPatterns,
  type PatternRules,
  type Random,
  struckSlots,
} from '@shedbook/core';
import { mean } from '@shedbook/signal';
import { type DrawBar, tiltedDraw } from './sample.ts';
import { keepsRules, type PointTables } from './tables.ts';

/** Up to this many bars are all looked at. */
export const LISTED_AT_MOST = 20_000;

/** Bars drawn for each tilt of the first look. */
const FIRST_LOOK = 200;

/** Bars drawn about each wanted difficulty. */
const DRAWN_PER_STEP = 120;

/** Steps of difficulty that a sample is spread over. */
const SAMPLE_STEPS = 40;

/** Tilts of the first look, from the easiest bars to the hardest. */
const TILTS = [24, 8, 4, 2.5, 1.6, 1, 0.6, 0.3, 0, -0.3, -0.6, -1, -1.6, -3];

/** Share of all bars that is harder than the sample needs to reach. */
const FEATS = 0.02;

/** Draws are given up after this many tries for each bar wanted, where limits refuse most. */
const TRIES = 20;

/** A bar that a page may take. */
export interface Candidate {
  /** Indices into the vocabulary, one a beat. */
  readonly cells: Uint16Array;
  readonly points: number;
}

/** The bars that a page is chosen from. */
export interface Pool {
  readonly candidates: readonly Candidate[];
  /** How many bars the limits allow; exact. */
  readonly allowed: bigint;
  /** Whether all of them are candidates. */
  readonly complete: boolean;
  /** The candidate of these cells, or null where it may not stand on a page. */
  grade(cells: Uint16Array): Candidate | null;
}

/** A range of difficulty, in points; null is no limit. */
export interface DifficultyRange {
  readonly least: number | null;
  readonly most: number | null;
}

function inRange(points: number, range: DifficultyRange): boolean {
  return (
    points >= (range.least ?? Number.NEGATIVE_INFINITY) && points <= (range.most ?? Number.POSITIVE_INFINITY)
  );
}

function byPoints(a: Candidate, b: Candidate): number {
  if (a.points !== b.points) return a.points - b.points;
  const beat = a.cells.findIndex((cell, i) => cell !== b.cells[i]);
  return beat < 0 ? 0 : (a.cells[beat] as number) - (b.cells[beat] as number);
}

/** Points to nine digits, so that sums in another order compare alike. */
function rounded(points: number): number {
  return Math.round(points * 1e9) / 1e9;
}

interface Basket {
  readonly seen: Map<string, Candidate>;
  /** Draws bars and keeps those within the rules; their points, in ascending order. */
  readonly draw: (from: DrawBar, wanted: number) => readonly number[];
}

/** Collects drawn bars that keep the rules. */
function basketOf(tables: PointTables, rules: PatternRules, random: Random): Basket {
  const seen = new Map<string, Candidate>();
  const strokes = rules.cells.map((cell) => struckSlots(cell).length);
  const draw = (from: DrawBar, wanted: number) => {
    const drawn: number[] = [];
    for (let tries = 0; drawn.length < wanted && tries < wanted * TRIES; tries += 1) {
      const cells = from(random);
      if (!keepsRules(rules, strokes, cells)) continue;
      const points = rounded(tables.points(cells));
      seen.set(cells.join(), { cells, points });
      drawn.push(points);
    }
    return drawn.sort((a, b) => a - b);
  };
  return { seen, draw };
}

interface Look {
  readonly tilt: number;
  readonly mean: number;
}

/** The tilt that should draw bars of about `points`, between the looks taken so far. */
function tiltFor(points: number, looks: readonly Look[]): number {
  const above = looks.findIndex((look) => look.mean >= points);
  const high = looks[above];
  const low = looks[above - 1];
  if (!high) return looks.at(-1)?.tilt ?? 0;
  if (!low) return high.tilt;
  const share = (points - low.mean) / (high.mean - low.mean || 1);
  return low.tilt + share * (high.tilt - low.tilt);
}

/** First looks with every tilt, and what only a fiftieth of all bars is harder than. */
function lookAround(tables: PointTables, rules: PatternRules, basket: Basket) {
  const looks: Look[] = [];
  let hardest = Number.POSITIVE_INFINITY;
  for (const tilt of TILTS) {
    const draw = tiltedDraw(tables, rules, tilt);
    const drawn = draw ? basket.draw(draw, FIRST_LOOK) : [];
    if (drawn.length === 0) continue;
    if (tilt === 0) hardest = drawn[Math.floor(drawn.length * (1 - FEATS))] ?? hardest;
    const look = { tilt, mean: mean(drawn) };
    if (look.mean >= (looks.at(-1)?.mean ?? look.mean)) looks.push(look);
  }
  return { looks, hardest: Math.min(hardest, looks.at(-1)?.mean ?? hardest) };
}

/** A sample that reaches evenly from the easiest bars to all but the hardest. */
function sampleBars(
  tables: PointTables,
  rules: PatternRules,
  random: Random,
  range: DifficultyRange,
): readonly Candidate[] {
  const basket = basketOf(tables, rules, random);
  const { looks, hardest } = lookAround(tables, rules, basket);
  const easiest = looks[0]?.mean ?? 0;
  const least = Math.max(range.least ?? easiest, easiest);
  const most = range.most ?? hardest;
  for (let step = 0; step <= SAMPLE_STEPS; step += 1) {
    const draw = tiltedDraw(tables, rules, tiltFor(least + ((most - least) * step) / SAMPLE_STEPS, looks));
    if (draw) basket.draw(draw, DRAWN_PER_STEP);
  }
  return [...basket.seen.values()].filter((each) => each.points <= most);
}

/** Bars picked evenly by their number, for limits that refuse nearly everything that is drawn. */
function pickBars(
  rules: PatternRules,
  tables: PointTables,
  random: Random,
  wanted: number,
): readonly Candidate[] {
  const counter = createPatternCounter(rules);
  const seen = new Map<string, Candidate>();
  for (let i = 0; i < wanted; i += 1) {
    const share = BigInt(Math.floor(random.next() * 2 ** 52));
    const cells = Uint16Array.from(counter.at((counter.total * share) >> 52n));
    seen.set(cells.join(), { cells, points: rounded(tables.points(cells)) });
  }
  return [...seen.values()];
}

function gather(
  tables: PointTables,
  rules: PatternRules,
  random: Random,
  range: DifficultyRange,
): readonly Candidate[] {
  const drawn = sampleBars(tables, rules, random, range);
  return drawn.length >= FIRST_LOOK
    ? drawn
    : [...drawn, ...pickBars(rules, tables, random, LISTED_AT_MOST / 4)];
}

/** The pool for rules and a range of difficulty. */
export function fillPool(
  tables: PointTables,
  rules: PatternRules,
  random: Random,
  range: DifficultyRange,
): Pool {
  const allowed = createPatternCounter(rules).total;
  const complete = allowed <= BigInt(LISTED_AT_MOST);
  const all = complete
    ? [...listPatterns(rules)].map((pattern): Candidate => {
        const cells = Uint16Array.from(pattern);
        return { cells, points: rounded(tables.points(cells)) };
      })
    : gather(tables, rules, random, range);
  const unique = new Map(all.map((each) => [each.cells.join(), each]));
  const candidates = [...unique.values()].filter((each) => inRange(each.points, range)).sort(byPoints);
  const strokes = rules.cells.map((cell) => struckSlots(cell).length);
  const grade = (cells: Uint16Array): Candidate | null => {
    if (cells.some((cell) => cell >= rules.cells.length) || !keepsRules(rules, strokes, cells)) return null;
    const points = rounded(tables.points(cells));
    return inRange(points, range) ? { cells, points } : null;
  };
  return { candidates, allowed, complete, grade };
}
