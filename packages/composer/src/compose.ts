/**
 * From a vocabulary to a graded page: `compose` is what the command line, the studio and the demo call.
 *
 * Conventions: exercises count from 1; difficulty in points; the same lesson, count and seed always give the same
 * page.
 */
import {
  type Cell,
  type Exercise,
  formatPattern,
  type Lesson,
  type Pattern,
  type PatternRules,
  possibleMoves,
  seededRandom,
} from '@shedbook/core';
import { choosePage } from './choose.ts';
import { type Grade, gradeExercise, gradeSettingsOf } from './grade.ts';
import { readGround } from './ground.ts';
import { type Alphabet, alphabetOf, type PageBar, pageBar, rotationJudge } from './page-bar.ts';
import type { PageAim } from './page-cost.ts';
import { fillPool, type Pool } from './pool.ts';
import { type ComposeReport, reportPage } from './report.ts';
import { rulesOf, vocabularyOf } from './rules.ts';
import { pointTables } from './tables.ts';

/** How often the even step from one bar to the next a step may be, where bars are few. */
const STEPS_IN_ONE = 2;

/** What to compose; what is left out is said by the lesson's `compose:`. */
export interface ComposeOptions {
  /** How many exercises, kept ones included. */
  readonly count?: number;
  readonly seed?: number | string;
  /** Numbers of the lesson's exercises that stay in their places. */
  readonly keep?: readonly number[];
}

/** A composed page. */
export interface Composition {
  /** Numbered from 1, in order; kept ones as they were. */
  readonly exercises: readonly Exercise[];
  readonly report: ComposeReport;
}

interface KeptExercise {
  readonly exercise: Exercise;
  readonly cells: readonly Cell[];
  readonly grade: Grade;
}

function keptOf(lesson: Lesson, keep: readonly number[]): readonly KeptExercise[] {
  return lesson.exercises
    .filter((exercise) => keep.includes(exercise.number))
    .map((exercise) => {
      const part = exercise.parts.find((each) => each.voice === lesson.comping) ?? exercise.parts[0];
      return { exercise, cells: part?.pattern.bars.flat() ?? [], grade: gradeExercise(lesson, exercise) };
    });
}

/** Kept bars by place; where the page is shorter than it was, the last ones move up to its end. */
function keptBars(
  alphabet: Alphabet,
  kept: readonly KeptExercise[],
  count: number,
): ReadonlyMap<number, PageBar> {
  const index = new Map(alphabet.cells.map((cell, i) => [cell.text, i]));
  const bars = new Map<number, PageBar>();
  kept.forEach(({ exercise, cells, grade }, i) => {
    const place = Math.min(exercise.number - 1, count - (kept.length - i));
    const ids = cells.map((cell) => index.get(cell.text) ?? 0);
    bars.set(place, pageBar(alphabet, ids, grade.points, exercise.number));
  });
  return bars;
}

/** The moves that the page can meet: those of all candidates, or of all that the rules allow. */
function movesToMeet(bars: readonly PageBar[], pool: Pool, rules: PatternRules): readonly number[] {
  const met = new Set(bars.flatMap((bar) => bar.moves));
  const n = rules.cells.length;
  if (!pool.complete && met.size < n * n) return possibleMoves(rules).map(([from, to]) => from * n + to);
  return [...met].sort((a, b) => a - b);
}

/** The largest step that a page may have, in points: known before a bar is chosen. */
function stepBoundOf(candidates: readonly PageBar[], count: number, allowed: number): number {
  const points = candidates.map((bar) => bar.points);
  const least = points[0] ?? 0;
  const most = points.at(-1) ?? 0;
  const even = (most - least) / Math.max(1, count - 1);
  const gap = points.reduce(
    (widest, each, i) => Math.max(widest, i === 0 ? 0 : each - (points[i - 1] as number)),
    0,
  );
  return Math.max(allowed, STEPS_IN_ONE * even, gap + even);
}

function patternOf(cells: readonly Cell[], beats: number): Pattern {
  return {
    bars: Array.from({ length: cells.length / beats }, (_, bar) =>
      cells.slice(bar * beats, (bar + 1) * beats),
    ),
  };
}

function exerciseFrom(lesson: Lesson, alphabet: Alphabet, bar: PageBar, place: number): Exercise {
  const kept = lesson.exercises.find((exercise) => exercise.number === bar.keptFrom);
  if (kept) return { ...kept, number: place + 1 };
  const cells = Array.from(bar.cells, (index) => alphabet.cells[index] as Cell);
  const pattern = patternOf(cells, lesson.meter.beats.length);
  return {
    number: place + 1,
    name: null,
    parts: [{ voice: lesson.comping, pattern }],
    sticking: null,
    notes: null,
  };
}

/**
 * Composes a page for a lesson.
 * @example formatPattern(compose(lesson, { count: 24, seed: 1 }).exercises[0].parts[0].pattern) // 'x.. ... ... ...'
 * @returns fewer exercises than asked where the limits leave fewer bars; `report.notes` says what could not be had.
 */
export function compose(lesson: Lesson, options: ComposeOptions = {}): Composition {
  const { limits, bars } = lesson.compose;
  const count = options.count ?? lesson.compose.count;
  const seed = options.seed ?? lesson.compose.seed;
  const random = seededRandom(seed);
  const settings = gradeSettingsOf(lesson);
  const ground = readGround(lesson, bars);
  const vocabulary = vocabularyOf(lesson);
  const rules = rulesOf(ground, vocabulary, limits);
  const pool = fillPool(pointTables(ground, vocabulary, settings), rules, random, limits.difficulty);
  const kept = keptOf(lesson, options.keep ?? []);
  const alphabet = alphabetOf(
    vocabulary,
    kept.flatMap((each) => each.cells),
  );
  const all = pool.candidates.map((each) => pageBar(alphabet, each.cells, each.points));
  const room = Math.max(kept.length, Math.min(count, all.length + kept.length));
  const keptAt = keptBars(alphabet, kept, room);
  const keptKeys = new Set([...keptAt.values()].map((bar) => bar.key));
  const candidates = all.filter((bar) => !keptKeys.has(bar.key));
  const aim: PageAim = {
    alphabet,
    moves: movesToMeet(all, pool, rules),
    stepBound: stepBoundOf(candidates, room, limits.step),
    beats: ground.meter.beats.length,
    areRotations: rotationJudge(alphabet),
  };
  const page = choosePage({ candidates, count: room, kept: keptAt, aim }, random);
  const exercises = page.map((bar, place) => exerciseFrom(lesson, alphabet, bar, place));
  const report = reportPage({ lesson, seed, asked: count, page, exercises, aim, pool });
  return { exercises, report };
}

/** The comping voice's pattern text of every exercise. */
export function patternTexts(lesson: Lesson, exercises: readonly Exercise[]): readonly string[] {
  return exercises.map((exercise) => {
    const part = exercise.parts.find((each) => each.voice === lesson.comping) ?? exercise.parts[0];
    return part ? formatPattern(part.pattern) : '';
  });
}
