/**
 * From candidates to a page with its report: what every way of composing has in common.
 *
 * Conventions: exercises count from 1; difficulty in points.
 */
import {
  type Cell,
  type Exercise,
  type Lesson,
  type Pattern,
  type PatternRules,
  possibleMoves,
  type Random,
} from '@shedbook/core';
import { choosePage } from './choose.ts';
import { type Grade, gradeExercise } from './grade.ts';
import type { Ground } from './ground.ts';
import { type Alphabet, alphabetOf, type PageBar, pageBar, rotationJudge } from './page-bar.ts';
import type { PageAim } from './page-cost.ts';
import type { Pool } from './pool.ts';
import { type ComposeReport, reportPage } from './report.ts';
import { STEP_GROWTH } from './windows.ts';

/** How often the even step from one bar to the next a step may be, where bars are few. */
const STEPS_IN_ONE = 2 * STEP_GROWTH;

/** Share of the bars that are left out as the hardest, and how many times the page's bars must be left then. */
const FEATS = 0.02;
const PLENTY = 4;

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
  readonly count: number;
  readonly seed: number | string;
  readonly random: Random;
  /** Numbers of the lesson's exercises that stay in their places. */
  readonly keep: readonly number[];
  /** Moves to be met, as indices `[from, to]`; all that the rules allow when left out. */
  readonly moves?: readonly (readonly [number, number])[];
}

interface KeptExercise {
  readonly exercise: Exercise;
  readonly cells: readonly Cell[];
  readonly grade: Grade;
}

/** What the comping voice plays in an exercise, or, where it does not play, the first part. */
export function compingPattern(lesson: Lesson, exercise: Exercise): Pattern {
  const part = exercise.parts.find((each) => each.voice === lesson.comping) ?? exercise.parts[0];
  return part?.pattern ?? { bars: [] };
}

function keptOf(lesson: Lesson, keep: readonly number[]): readonly KeptExercise[] {
  return lesson.exercises
    .filter((exercise) => keep.includes(exercise.number))
    .map((exercise) => ({
      exercise,
      cells: compingPattern(lesson, exercise).bars.flat(),
      grade: gradeExercise(lesson, exercise),
    }));
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

/** What is left of the candidates without the hardest: feats that a page has no need of, where there is plenty. */
function withoutFeats(bars: readonly PageBar[], count: number): readonly PageBar[] {
  const left = bars.slice(0, Math.ceil(bars.length * (1 - FEATS)));
  return left.length >= count * PLENTY && movesMet(left).size === movesMet(bars).size ? left : bars;
}

function splitBars(cells: readonly Cell[], beats: number): Pattern {
  const bars = cells.length / beats;
  return { bars: Array.from({ length: bars }, (_, bar) => cells.slice(bar * beats, (bar + 1) * beats)) };
}

function exerciseFrom(lesson: Lesson, alphabet: Alphabet, bar: PageBar, place: number): Exercise {
  const kept = lesson.exercises.find((exercise) => exercise.number === bar.keptFrom);
  if (kept) return { ...kept, number: place + 1 };
  const cells = Array.from(bar.cells, (index) => alphabet.cells[index] as Cell);
  const pattern = splitBars(cells, lesson.meter.beats.length);
  const parts = [{ voice: lesson.comping, pattern }];
  return { number: place + 1, name: null, parts, sticking: null, notes: null };
}

/** Composes a page from candidates. */
export function composePage(source: PageSource): Composition {
  const { lesson, ground, rules, pool, count, seed, random } = source;
  const { limits } = lesson.compose;
  const kept = keptOf(lesson, source.keep);
  const alphabet = alphabetOf(
    rules.cells,
    kept.flatMap((each) => each.cells),
  );
  const all = pool.candidates.map((each) => pageBar(alphabet, each.cells, each.points));
  const keptKeys = new Set([...keptBars(alphabet, kept, count).values()].map((bar) => bar.key));
  const fresh = all.filter((bar) => !keptKeys.has(bar.key));
  const room = Math.max(kept.length, Math.min(count, fresh.length + kept.length));
  const candidates = limits.difficulty.most === null ? withoutFeats(fresh, room) : fresh;
  const evenStep = evenStepOf(candidates, room);
  const aim: PageAim = {
    alphabet,
    moves: movesToMeet(source, all),
    stepBound: stepBoundOf(candidates, evenStep, limits.step),
    evenStep,
    beats: ground.meter.beats.length,
    areRotations: rotationJudge(alphabet),
  };
  const page = choosePage({ candidates, count: room, kept: keptBars(alphabet, kept, room), aim }, random);
  const exercises = page.map((bar, place) => exerciseFrom(lesson, alphabet, bar, place));
  return {
    exercises,
    report: reportPage({ lesson, ground, seed, asked: count, page, exercises, aim, pool }),
  };
}
