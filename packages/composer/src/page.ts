/**
 * From candidates to a page with its report: what every way of composing has in common.
 *
 * Conventions: exercises count from 1; difficulty in points.
 */
import {
  type Cell,
  type Exercise,
  type ExercisePart,
  type Lesson,
  type Pattern,
  type PatternRules,
  possibleMoves,
  type Random,
} from '@shedbook/core';
import { type BarStore, barStore } from './bar-store.ts';
import { blocksOf, isTight } from './blocks.ts';
import { choosePage } from './choose.ts';
import { figuresIn, figuresWanted } from './figures.ts';
import { type Grade, gradeExercise } from './grade.ts';
import type { Ground } from './ground.ts';
import { type Alphabet, alphabetOf, type PageBar, pageBar } from './page-bar.ts';
import type { PageAim } from './page-cost.ts';
import type { Pool } from './pool.ts';
import { type ComposeReport, reportPage } from './report.ts';
import type { Script } from './script.ts';
import { STEP_GROWTH } from './windows.ts';

/** How often the even step from one bar to the next a step may be, where bars are few. */
export const STEPS_IN_ONE = 1.5 * STEP_GROWTH;

/** A page with this many times the lines that all moves need is free to stop at a difficulty it can climb to. */
const FREE_TO_STOP = 1.5;

/** Share of the bars that are left out as the hardest, and how many times the page's bars must be left then. */
const FEATS = 0.02;
const PLENTY = 4;

/** With fewer bars than this many a line, seeds would come to the same page: each does without a share of them. */
const BARS_A_LINE = 24;
const LEFT_OUT = 0.3;

/** A composed page. */
export interface Composition {
  /** Numbered from 1, in order; kept ones as they were. */
  readonly exercises: readonly Exercise[];
  readonly report: ComposeReport;
}

/** What a page is made from. */
export interface PageSource {
  readonly lesson: Lesson;
  readonly ground: Ground;
  readonly rules: PatternRules;
  readonly pool: Pool;
  /** How cells are read from exercises and written as them. */
  readonly script: Script;
  readonly count: number;
  readonly seed: number | string;
  readonly random: Random;
  /** Numbers of the lesson's exercises that stay in their places. */
  readonly keep: readonly number[];
  /** How far the page quotes figures of the trade, 0 to 1. */
  readonly idiom: number;
  /** Whether lines are chosen one by one, without themes: a phrase has its own. */
  readonly isPlain?: boolean;
  /** Moves to be met, as indices `[from, to]`; all that the rules allow when left out. */
  readonly moves?: readonly (readonly [number, number])[];
}

interface KeptExercise {
  readonly exercise: Exercise;
  readonly cells: readonly Cell[];
  readonly grade: Grade;
}

/** The comping voice's part of an exercise, or, where it does not play, the first part. */
export function compingPart(lesson: Lesson, exercise: Exercise): ExercisePart {
  const part = exercise.parts.find((each) => each.voice === lesson.comping) ?? exercise.parts[0];
  return part ?? { voice: lesson.comping, pattern: { bars: [] } };
}

/** What the comping voice plays in an exercise, or, where it does not play, the first part. */
export function compingPattern(lesson: Lesson, exercise: Exercise): Pattern {
  return compingPart(lesson, exercise).pattern;
}

/** What is played where the comping voice of an exercise, or its first part, plays another pattern; other voices stay. */
export function withComping(lesson: Lesson, exercise: Exercise, pattern: Pattern): readonly ExercisePart[] {
  const comping = compingPart(lesson, exercise);
  if (exercise.parts.length === 0) return [{ ...comping, pattern }];
  return exercise.parts.map((part) => (part === comping ? { ...part, pattern } : part));
}

function keptOf({ lesson, keep, script }: PageSource): readonly KeptExercise[] {
  return lesson.exercises
    .filter((exercise) => keep.includes(exercise.number))
    .map((exercise) => ({
      exercise,
      cells: script.read(exercise),
      grade: gradeExercise(lesson, exercise),
    }));
}

/** Number of the first exercise of a page: those of a section may count on from the ones before it. */
function firstNumber({ exercises }: Lesson): number {
  return exercises[0]?.number ?? 1;
}

/** Kept bars by place; where the page is shorter than it was, the last ones move up to its end. */
function keptBars(
  alphabet: Alphabet,
  kept: readonly KeptExercise[],
  { count, first }: { readonly count: number; readonly first: number },
): ReadonlyMap<number, PageBar> {
  const index = new Map(alphabet.cells.map((cell, i) => [cell.text, i]));
  const bars = new Map<number, PageBar>();
  kept.forEach(({ exercise, cells, grade }, i) => {
    const place = Math.min(exercise.number - first, count - (kept.length - i));
    const ids = Uint16Array.from(cells, (cell) => index.get(cell.text) ?? 0);
    bars.set(place, pageBar(alphabet, ids, grade.points, exercise.number));
  });
  return bars;
}

function movesMet(bars: readonly PageBar[]): ReadonlySet<number> {
  const met = new Set<number>();
  for (const bar of bars) for (const move of bar.moves) met.add(move);
  return met;
}

/** The moves that the page can meet: those of all candidates, or of all that the rules allow. */
function movesToMeet(source: PageSource, bars: readonly PageBar[]): readonly number[] {
  const n = source.rules.cells.length;
  if (source.moves) return source.moves.map(([from, to]) => from * n + to);
  const met = movesMet(bars);
  if (!source.pool.complete && met.size < n * n) {
    return possibleMoves(source.rules).map(([from, to]) => from * n + to);
  }
  return [...met].sort((a, b) => a - b);
}

/** The step from each bar to the next if all were alike, in points. */
function evenStepOf(candidates: readonly PageBar[], count: number): number {
  return ((candidates.at(-1)?.points ?? 0) - (candidates[0]?.points ?? 0)) / Math.max(1, count - 1);
}

/** The largest step that a page may have, in points: known before a bar is chosen. */
function stepBoundOf(candidates: readonly PageBar[], evenStep: number, allowed: number): number {
  const gaps = candidates.slice(1).map((bar, i) => bar.points - (candidates[i] as PageBar).points);
  const widest = gaps.reduce((most, gap) => Math.max(most, gap), 0);
  return Math.max(allowed, STEPS_IN_ONE * evenStep, widest + evenStep);
}

/** What is left of the candidates up to some points, where that leaves plenty and every move; else all of them. */
function upTo(bars: readonly PageBar[], left: readonly PageBar[], count: number): readonly PageBar[] {
  return left.length >= count * PLENTY && movesMet(left).size === movesMet(bars).size ? left : bars;
}

/** The candidates without the hardest: feats that a page has no need of, where there is plenty. */
function withoutFeats(bars: readonly PageBar[], count: number): readonly PageBar[] {
  return upTo(bars, bars.slice(0, Math.ceil(bars.length * (1 - FEATS))), count);
}

/** The candidates that a short page climbs to in steps that are always allowed. */
function withinReach(bars: readonly PageBar[], count: number, step: number): readonly PageBar[] {
  const first = bars[0];
  const inOne = first?.cells.length ?? 1;
  if (!first || count < (FREE_TO_STOP * movesMet(bars).size) / inOne) return bars;
  const most = first.points + (count - 1) * step * (first.cells.length / inOne);
  return upTo(
    bars,
    bars.filter((bar) => bar.points <= most),
    Math.ceil(count / PLENTY),
  );
}

function exerciseFrom(
  { lesson, script }: PageSource,
  alphabet: Alphabet,
  bar: PageBar,
  place: number,
): Exercise {
  const kept = lesson.exercises.find((exercise) => exercise.number === bar.keptFrom);
  const number = firstNumber(lesson) + place;
  if (kept) return { ...kept, number };
  const cells = Array.from(bar.cells, (index) => alphabet.cells[index] as Cell);
  return { number, name: null, parts: script.write(cells), sticking: null, notes: null };
}

/** The bars that are figures of the trade, the commonest first, `most` at most. */
function figureBars(source: PageSource, store: BarStore, most: number): readonly PageBar[] {
  const { lesson, rules } = source;
  const texts = rules.cells.map((cell) => cell.text);
  return figuresIn(lesson, texts)
    .flatMap(({ cells }) => (cells.length === source.ground.length ? (store.find(cells) ?? []) : []))
    .slice(0, most);
}

/** What lines are drawn from. */
interface Offer {
  /** In ascending order of points. */
  readonly candidates: readonly PageBar[];
  readonly store: BarStore;
  readonly figures: readonly PageBar[];
}

/** What a seed draws from: of a short list it does without some bars, figures aside, where there are plenty. */
function offerOf(
  source: PageSource,
  alphabet: Alphabet,
  candidates: readonly PageBar[],
  lines: number,
): Offer {
  const { pool, random, idiom } = source;
  const store = barStore(alphabet, candidates, pool);
  const figures = figureBars(source, store, figuresWanted(idiom, lines));
  if (!pool.complete || candidates.length > BARS_A_LINE * lines) return { candidates, store, figures };
  const left = candidates.filter((bar) => random.next() >= LEFT_OUT || figures.includes(bar));
  const offered = upTo(candidates, left, lines);
  if (offered === candidates) return { candidates, store, figures };
  return { candidates: offered, store: barStore(alphabet, offered, pool), figures };
}

/** The candidates that no kept bar is the same as. */
function withoutKept(bars: readonly PageBar[], kept: ReadonlyMap<number, PageBar>): readonly PageBar[] {
  if (kept.size === 0) return bars;
  const texts = new Set(Array.from(kept.values(), (bar) => bar.cells.join()));
  return bars.filter((bar) => !texts.has(bar.cells.join()));
}

/** Composes a page from candidates. */
export function composePage(source: PageSource): Composition {
  const { lesson, ground, rules, pool, count, seed, random } = source;
  const { limits } = lesson.compose;
  const first = firstNumber(lesson);
  const kept = keptOf(source);
  const alphabet = alphabetOf(
    rules.cells,
    kept.flatMap((each) => each.cells),
  );
  const all = pool.candidates.map((each) => pageBar(alphabet, each.cells, each.points));
  const fresh = withoutKept(all, keptBars(alphabet, kept, { count, first }));
  const room = Math.max(kept.length, Math.min(count, fresh.length + kept.length));
  const open = limits.difficulty.most === null;
  const reached = open ? withinReach(withoutFeats(fresh, room), room, limits.step) : fresh;
  const evenStep = evenStepOf(reached, room);
  const { candidates, store, figures } = offerOf(source, alphabet, reached, room);
  const moves = movesToMeet(source, all);
  const crowding = moves.length / Math.max(1, room * ground.length);
  const blocks = blocksOf(room, { moves: crowding, figures: figures.length });
  const aim: PageAim = {
    alphabet,
    moves,
    figures: new Set(figures),
    stepBound: stepBoundOf(reached, evenStep, limits.step),
    evenStep,
    range: [reached[0]?.points ?? 0, reached.at(-1)?.points ?? 0],
    beats: ground.meter.beats.length,
    mayStart: (cell) => rules.allows?.(0, cell) ?? true,
  };
  const task = {
    candidates,
    count: room,
    kept: keptBars(alphabet, kept, { count: room, first }),
    aim,
    store,
    blocks,
    figures,
    isTight: isTight(crowding),
    isPlain: source.isPlain ?? false,
  };
  const { bars: page, blocks: woven, themes } = choosePage(task, random);
  const exercises = page.map((bar, place) => exerciseFrom(source, alphabet, bar, place));
  return {
    exercises,
    report: reportPage({
      lesson,
      ground,
      script: source.script,
      rules,
      seed,
      asked: count,
      page,
      themes,
      blocks: woven,
      exercises,
      aim,
      pool,
      isPlain: task.isPlain,
    }),
  };
}
