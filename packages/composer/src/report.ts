/**
 * What a composed page has and lacks, in figures and in facts.
 *
 * Conventions: exercises count from 1; difficulty in points.
 */

import { type Cell, type Exercise, formatPattern, type Lesson, type PatternRules } from '@shedbook/core';
import type { Block } from './blocks.ts';
import type { CellMove } from './cell-move.ts';
import { linesForThemes } from './choose.ts';
import { drilledHeading, ledHeading } from './drill.ts';
import { type Grade, gradeExercise, gradeSettingsOf, patternGrader } from './grade.ts';
import type { Ground } from './ground.ts';
import { fastestStrokes, PUBLISHED_HAND_RATE, PUBLISHED_PAIR_RATE, speedLimit } from './hand-speed.ts';
import { ideaInBlock, sharedThemeFact, themeFact } from './idea.ts';
import type { IdeaFact, ThemeFact } from './idea-fact.ts';
import type { MoveFact, NoteFact } from './note-fact.ts';
import type { PageBar } from './page-bar.ts';
import type { PageAim } from './page-cost.ts';
import type { Pool } from './pool.ts';
import { mergeCells } from './score.ts';
import type { Script } from './script.ts';
import { tooFast } from './too-fast.ts';

/** One exercise of the page. */
export interface ReportedBar {
  readonly number: number;
  /** Pattern text of the comping voice. */
  readonly text: string;
  readonly kept: boolean;
  readonly grade: Grade;
  /** Cells that the page has here for the first time. */
  readonly newCells: readonly string[];
  /** Moves that the page has here for the first time. */
  readonly newMoves: readonly CellMove[];
  /** What the bar makes of its block's theme, or null where the block has none. */
  readonly idea: IdeaFact | null;
}

/** Which moves between cells the page has. */
export interface CoverageReport {
  /** Number of moves that the vocabulary and its limits allow. */
  readonly possible: number;
  /** How many of them the page has. */
  readonly met: number;
  readonly missed: readonly CellMove[];
  /** No page with a smaller number of exercises can meet all: possible moves by moves in an exercise, rounded up. */
  readonly lowerBound: number;
  /** Number of moves that a page of this many exercises can meet at most. */
  readonly bestPossible: number;
  /** Number of the exercise at which the last move is met, or null when some are missed. */
  readonly completeAt: number | null;
}

/** How difficulty goes, in points. */
export interface DifficultyReport {
  readonly easiest: number;
  readonly hardest: number;
  readonly largestStep: number;
  /** Bound on steps, set before any bar was chosen. */
  readonly stepBound: number;
  /** Numbers of exercises that are easier than the one before: kept ones only. */
  readonly falls: readonly number[];
}

/** Lines of the page that belong together. */
export interface ReportedBlock {
  /** Number of its first exercise. */
  readonly first: number;
  /** Number of its last exercise. */
  readonly last: number;
  /** Pattern text of its theme, or null where its lines have none. */
  readonly theme: string | null;
  /** What the theme is, for a heading. */
  readonly heading: ThemeFact | null;
}

/** What a composed page has and lacks. */
export interface ComposeReport {
  readonly seed: number | string;
  /** Number of exercises that were asked for. */
  readonly asked: number;
  readonly count: number;
  /** How many bars the vocabulary and its limits allow: exact, in decimal digits. */
  readonly allowed: string;
  /** How many of them were looked at. */
  readonly lookedAt: number;
  readonly coverage: CoverageReport;
  readonly difficulty: DifficultyReport;
  /** The page's blocks, each of one theme. */
  readonly blocks: readonly ReportedBlock[];
  readonly bars: readonly ReportedBar[];
  /** What could not be had, and why. */
  readonly notes: readonly NoteFact[];
}

/** What a report is made of. */
export interface ReportTask {
  readonly lesson: Lesson;
  /** The ground under new exercises. */
  readonly ground: Ground;
  readonly script: Script;
  readonly rules: PatternRules;
  readonly seed: number | string;
  /** Number of exercises that were asked for. */
  readonly asked: number;
  readonly page: readonly PageBar[];
  readonly blocks: readonly Block[];
  /** By block. */
  readonly themes: readonly (PageBar | null)[];
  readonly exercises: readonly Exercise[];
  readonly aim: PageAim;
  readonly pool: Pool;
  /** Whether lines are chosen one by one, without themes, as they were asked for. */
  readonly isPlain: boolean;
}

/** The comping voice's pattern text, or, where others play, every voice with its own. */
export function exerciseText(lesson: Lesson, { parts }: Pick<Exercise, 'parts'>): string {
  const [first] = parts;
  if (first && parts.length === 1 && first.voice === lesson.comping) return formatPattern(first.pattern);
  return parts.map((part) => `${part.voice} ${formatPattern(part.pattern)}`).join(' / ');
}

function moveText(aim: PageAim, move: number): CellMove {
  const n = aim.alphabet.vocabulary;
  const text = (index: number) => (aim.alphabet.cells[index] as Cell).text;
  return { from: text(Math.floor(move / n)), to: text(move % n) };
}

function reportBars(task: ReportTask, ideas: readonly (IdeaFact | null)[]): readonly ReportedBar[] {
  const metCells = new Set<number>();
  const metMoves = new Set<number>();
  const { aim, lesson, ground } = task;
  const grade = patternGrader(ground, gradeSettingsOf(lesson));
  return task.page.map((bar, place) => {
    const newCells = [...new Set(Array.from(bar.cells))].filter((cell) => !metCells.has(cell));
    const newMoves = bar.moves.filter((move) => !metMoves.has(move));
    for (const cell of newCells) metCells.add(cell);
    for (const move of newMoves) metMoves.add(move);
    const exercise = task.exercises[place] as Exercise;
    const part = exercise.parts.find((each) => each.voice === lesson.comping) ?? exercise.parts[0];
    return {
      number: place + 1,
      text: exerciseText(lesson, exercise),
      kept: bar.keptFrom !== null,
      grade:
        bar.keptFrom === null && part && exercise.parts.length === 1
          ? grade(part.pattern)
          : gradeExercise(lesson, exercise),
      newCells: newCells.map((cell) => (aim.alphabet.cells[cell] as Cell).text),
      newMoves: newMoves.map((move) => moveText(aim, move)),
      idea: ideas[place] ?? null,
    };
  });
}

function cellsOf(task: ReportTask, bar: PageBar): readonly Cell[] {
  return Array.from(bar.cells, (index) => task.aim.alphabet.cells[index] as Cell);
}

/** The pattern text of a bar. */
function textOf(task: ReportTask, bar: PageBar): string {
  const cells = cellsOf(task, bar);
  const { beats } = task.aim;
  const bars = Array.from({ length: cells.length / beats }, (_, i) =>
    cells.slice(i * beats, (i + 1) * beats),
  );
  return formatPattern({ bars });
}

/** What the heading over a theme says. */
function headingOf(task: ReportTask, theme: PageBar): ThemeFact {
  const cells = cellsOf(task, theme);
  const parts = task.script.write(cells);
  if (parts.length === 1) return themeFact(cells, task.aim.beats);
  const together = cells.map((cell) => mergeCells(task.script.lines(cell).map((line) => line.cell)));
  return sharedThemeFact(together, parts, task.aim.beats);
}

function ideaAt(task: ReportTask, place: number): IdeaFact | null {
  const { blocks, themes, page } = task;
  const index = blocks.findIndex(({ start, length }) => place >= start && place < start + length);
  const theme = themes[index];
  if (!theme) return null;
  const { start, length } = blocks[index] as Block;
  const before = place === start + length - 1 ? themes[index - 1] : null;
  return ideaInBlock({
    line: cellsOf(task, page[place] as PageBar),
    theme: cellsOf(task, theme),
    before: before ? cellsOf(task, before) : null,
    inBar: task.aim.beats,
  });
}

function reportBlocks(task: ReportTask, ideas: readonly (IdeaFact | null)[]): readonly ReportedBlock[] {
  return task.blocks.map(({ start, length }, i) => {
    const theme = task.themes[i] ?? null;
    const text = theme && textOf(task, theme);
    const first = task.page[start];
    const named = theme && headingOf(task, theme);
    const isLed = theme !== null && first !== undefined && first !== theme;
    const heading =
      named && isLed
        ? ledHeading(headingOf(task, first), named)
        : named &&
          drilledHeading(
            named,
            ideas.slice(start, start + length).filter((idea) => idea !== null),
          );
    return { first: start + 1, last: start + length, theme: text, heading };
  });
}

function reportCoverage({ page, aim }: ReportTask): CoverageReport {
  const left = new Set(aim.moves);
  let completeAt: number | null = null;
  page.forEach((bar, place) => {
    for (const move of bar.moves) left.delete(move);
    if (left.size === 0) completeAt ??= place + 1;
  });
  const inOne = page[0]?.cells.length ?? 1;
  return {
    possible: aim.moves.length,
    met: aim.moves.length - left.size,
    missed: [...left].map((move) => moveText(aim, move)),
    lowerBound: Math.ceil(aim.moves.length / inOne),
    bestPossible: Math.min(aim.moves.length, page.length * inOne),
    completeAt,
  };
}

/** Points that differ by less are the same: sums of floats. */
const SAME_POINTS = 1e-6;

function reportDifficulty({ page, aim }: ReportTask): DifficultyReport {
  const steps = page.slice(1).map((bar, i) => bar.points - (page[i] as PageBar).points);
  return {
    easiest: page[0]?.points ?? 0,
    hardest: page.at(-1)?.points ?? 0,
    largestStep: Math.max(0, ...steps),
    stepBound: aim.stepBound,
    falls: steps.flatMap((step, i) => (step < -SAME_POINTS ? [i + 2] : [])),
  };
}

/** What the limits name and the lesson has not: a slip of the pen, most likely. */
function limitNotes(lesson: Lesson): readonly NoteFact[] {
  const { start, neverStart, beats } = lesson.compose.limits;
  const known = new Set(lesson.vocabulary.map(({ cell }) => cell.text));
  const named = new Set([...(start ?? []), ...neverStart, ...Object.values(beats).flat()]);
  const strange = [...named].filter((text) => !known.has(text));
  const beyond = Object.keys(beats).filter((beat) => Number(beat) > lesson.meter.beats.length);
  const { text: meter, beats: own } = lesson.meter;
  return [
    ...strange.map((cell): NoteFact => ({ fact: 'strange-cell', cell })),
    ...beyond.map((beat): NoteFact => ({ fact: 'strange-beat', beat, meter, beats: own.length })),
  ];
}

/** That there is nothing to choose from. */
function emptyNotes({ pool, lesson }: ReportTask): readonly NoteFact[] {
  if (lesson.vocabulary.length === 0) return [{ fact: 'no-vocabulary' }];
  return pool.candidates.length === 0 ? [{ fact: 'no-bar-left' }] : [];
}

/** What a page of this many exercises has not. */
function shortNotes(
  { page, asked }: ReportTask,
  { missed, lowerBound }: CoverageReport,
): readonly NoteFact[] {
  const left = page.length;
  if (left === 0) return [];
  const moves = missed.map((move): MoveFact => ({ fact: 'move', ...move }));
  const fewer: NoteFact = { fact: 'few-exercises', asked, left };
  const without: NoteFact =
    left < lowerBound
      ? { fact: 'too-many-moves', moves, exercises: lowerBound }
      : { fact: 'missed-moves', moves };
  return [...(left < asked ? [fewer] : []), ...(moves.length > 0 ? [without] : [])];
}

/** That lines have no theme in common, though the page has all the bars and moves that it was asked for. */
function themeNotes({ page, themes, aim, asked, isPlain }: ReportTask, { missed }: CoverageReport) {
  const isBare = themes.length > 1 && themes.every((theme) => theme === null);
  if (isPlain || !isBare || page.length < asked || missed.length > 0) return [];
  const needed = linesForThemes(aim.moves.length, page[0]?.cells.length ?? 1);
  return [{ fact: 'no-themes', exercises: Math.max(page.length + 1, needed) }] as const;
}

function difficultyNotes({ falls, largestStep, stepBound }: DifficultyReport): readonly NoteFact[] {
  const easier = falls.map((exercise): NoteFact => {
    return { fact: 'easier-than-before', exercise, before: exercise - 1 };
  });
  const step: NoteFact = { fact: 'large-step', step: largestStep, bound: stepBound };
  return largestStep > stepBound + SAME_POINTS ? [...easier, step] : easier;
}

/** Rates above which something is said, in strokes a second of a hand. */
interface Rates {
  readonly above: number;
  readonly upTo?: number;
}

/** Which exercises have a rate that is told, and the fastest of them, as a note. */
function fastNote(
  fact: 'fast-pairs' | 'fast-doubles' | 'fast-runs',
  rates: readonly number[],
  { above, upTo = Number.POSITIVE_INFINITY }: Rates,
): readonly NoteFact[] {
  const isTold = (rate: number) => rate > above + SAME_POINTS && rate <= upTo + SAME_POINTS;
  const exercises = rates.flatMap((rate, i) => (isTold(rate) ? [String(i + 1)] : []));
  if (exercises.length === 0) return [];
  return [{ fact, exercises, rate: Math.max(...rates.filter(isTold)), published: above }];
}

/** That some exercises ask a limb for more than is published, or for what only a double stroke gives. */
function speedNotes(task: ReportTask): readonly NoteFact[] {
  const compingCells = (bar: PageBar) =>
    cellsOf(task, bar).map((cell) => task.script.lines(cell)[0]?.cell ?? cell);
  const { ground } = task;
  const fastest = task.page.map((bar) => fastestStrokes(ground, compingCells(bar)));
  const held = speedLimit(ground, PUBLISHED_HAND_RATE);
  const paired = speedLimit(ground, PUBLISHED_PAIR_RATE);
  const twos = fastest.map(({ two }) => two);
  return [
    ...fastNote(
      'fast-runs',
      fastest.map(({ three }) => three),
      { above: held },
    ),
    ...fastNote('fast-pairs', twos, { above: paired }),
    ...fastNote('fast-doubles', twos, { above: held, upTo: paired }),
  ];
}

/** What the vocabulary has that a limb cannot keep up at the goal tempo. */
function leftOutNotes({ lesson, ground, rules, script }: ReportTask): readonly NoteFact[] {
  const { limits } = lesson.compose;
  const { cells, moves } = tooFast(ground, rules, limits, script);
  const rate = limits.handSpeed;
  const facts = moves.map((move): MoveFact => ({ fact: 'move', ...move }));
  return [
    ...(cells.length > 0 ? [{ fact: 'cells-too-fast', cells, rate } as const] : []),
    ...(moves.length > 0 ? [{ fact: 'moves-too-fast', moves: facts, rate } as const] : []),
  ];
}

/** The report of a page. */
export function reportPage(task: ReportTask): ComposeReport {
  const { page } = task;
  const coverage = reportCoverage(task);
  const difficulty = reportDifficulty(task);
  const ideas = page.map((_, place) => ideaAt(task, place));
  return {
    seed: task.seed,
    asked: task.asked,
    count: page.length,
    allowed: task.pool.allowed.toString(),
    lookedAt: task.pool.candidates.length,
    coverage,
    difficulty,
    blocks: reportBlocks(task, ideas),
    bars: reportBars(task, ideas),
    notes: [
      ...limitNotes(task.lesson),
      ...emptyNotes(task),
      ...shortNotes(task, coverage),
      ...themeNotes(task, coverage),
      ...difficultyNotes(difficulty),
      ...speedNotes(task),
      ...leftOutNotes(task),
    ],
  };
}
