/**
 * Grading: how hard a bar of comping is over its groove, as a sum of parts that a teacher can read.
 *
 * Conventions: difficulty in points; a part's points are its count times its weight. An exercise of several bars
 * has the sum over its bars. The bar is looped: its last beat leads to its first.
 */
import {
  type Cell,
  type ComposeWeights,
  commonGrid,
  DEFAULT_COMPOSE_SETTINGS,
  type Exercise,
  isStruck,
  keithSyncopation,
  type Lesson,
  longuetHigginsLee,
  type Pattern,
  sectionOf,
} from '@shedbook/core';
import type { Counts } from './counts.ts';
import type { Ground } from './ground.ts';
import { newBeats } from './memory.ts';
import { PARTS, type PartName } from './parts.data.ts';
import { countScoreBeat, countScoreMove, type LimbCell, type Line, linesOf, mergeCells } from './score.ts';

/** One part of a grade. */
export interface GradedPart {
  readonly part: PartName;
  readonly count: number;
  /** Count times weight. */
  readonly points: number;
}

/** How hard a bar is, and why. */
export interface Grade {
  /** Sum of the parts. */
  readonly points: number;
  /** All parts, in the order in which they are explained. */
  readonly parts: readonly GradedPart[];
}

/** How a bar is graded. */
export interface GradeSettings {
  readonly weights: ComposeWeights;
  /** Strokes a second that a hand can keep up at the goal tempo. */
  readonly handSpeed: number;
}

/** The settings that a lesson grades by. */
export function gradeSettingsOf(lesson: Lesson): GradeSettings {
  return { weights: lesson.compose.weights, handSpeed: lesson.compose.limits.handSpeed };
}

/** The settings where a lesson says nothing. */
export const DEFAULT_GRADE_SETTINGS: GradeSettings = {
  weights: DEFAULT_COMPOSE_SETTINGS.weights,
  handSpeed: DEFAULT_COMPOSE_SETTINGS.limits.handSpeed,
};

/** Prime factors of a number, small ones first, or threes first. */
function divisionsOf(n: number, threesFirst: boolean): readonly number[] {
  const factors: number[] = [];
  let rest = n;
  for (let p = 2; p <= rest; p += 1) {
    while (rest % p === 0) {
      factors.push(p);
      rest /= p;
    }
  }
  return threesFirst ? factors.toReversed() : factors;
}

function bitsOf(cells: readonly Cell[], slots: number): readonly number[] {
  return cells.flatMap((cell) => {
    const stretch = slots / cell.marks.length;
    return Array.from({ length: slots }, (_, i) => {
      const mark = i % stretch === 0 ? cell.marks[i / stretch] : undefined;
      return mark !== undefined && isStruck(mark) ? 1 : 0;
    });
  });
}

/** The two measures that need a whole bar at once. */
export function countBar(ground: Ground, cells: readonly Cell[]): Counts {
  const slots = commonGrid(cells.map((cell) => cell.marks.length));
  const bits = bitsOf(cells, slots);
  const { beats, compound } = ground.meter;
  const divisions = [...divisionsOf(beats.length, false), ...divisionsOf(slots, compound)];
  return { lhl: Math.max(0, longuetHigginsLee(bits, divisions, 'same bar')), keith: keithSyncopation(bits) };
}

function barsOfCells(ground: Ground, cells: readonly Cell[]): readonly (readonly Cell[])[] {
  const inBar = ground.meter.beats.length;
  return Array.from({ length: ground.bars }, (_, bar) => cells.slice(bar * inBar, (bar + 1) * inBar));
}

/** What each line plays on a beat. */
function limbCellsAt(lines: readonly Line[], beat: number): readonly LimbCell[] {
  return lines.map(({ ground, cells }) => ({ ground, cell: cells[beat % cells.length] as Cell }));
}

/** How beats, moves and bars are counted. */
interface Counting {
  beat(beat: number, here: readonly LimbCell[]): Counts;
  move(beat: number, here: readonly LimbCell[], next: readonly LimbCell[]): Counts;
  bar(ground: Ground, cells: readonly Cell[]): Counts;
}

function countingFor(handSpeed: number): Counting {
  return {
    beat: (beat, here) => countScoreBeat(beat, here, handSpeed),
    move: (beat, here, next) => countScoreMove(beat, here, next, handSpeed),
    bar: countBar,
  };
}

const textOf = (cells: readonly LimbCell[]) => cells.map(({ cell }) => cell.text).join('/');

/** Counting that works out each beat, move and bar once; for lines over the same grounds only. */
function countingOnce(handSpeed: number): Counting {
  const plain = countingFor(handSpeed);
  const known = new Map<string, Counts>();
  const once = (key: string, count: () => Counts): Counts => {
    const counts = known.get(key) ?? count();
    known.set(key, counts);
    return counts;
  };
  return {
    beat: (beat, here) => once(`${beat} ${textOf(here)}`, () => plain.beat(beat, here)),
    move: (beat, here, next) =>
      once(`${beat} ${textOf(here)} ${textOf(next)}`, () => plain.move(beat, here, next)),
    bar: (ground, cells) => once(cells.map((each) => each.text).join(' '), () => plain.bar(ground, cells)),
  };
}

function allCounts(lines: readonly Line[], counting: Counting): readonly Counts[] {
  const [first] = lines;
  if (!first) return [];
  const beats = first.cells.map((_, beat) => limbCellsAt(lines, beat));
  const alone = beats.map((here, beat) => counting.beat(beat, here));
  const moves = beats.map((here, beat) =>
    counting.move(beat, here, beats[(beat + 1) % beats.length] ?? here),
  );
  const whole = beats.map((here) => mergeCells(here.map((line) => line.cell)));
  const bars = barsOfCells(first.ground, whole).map((bar) => counting.bar(first.ground, bar));
  const texts = beats.map(textOf);
  return [...alone, ...moves, ...bars, { memory: newBeats(texts, first.ground.meter.beats.length) }];
}

function gradeBy(lines: readonly Line[], settings: GradeSettings, counting: Counting): Grade {
  const counts = allCounts(lines, counting);
  const parts = PARTS.map((part): GradedPart => {
    const count = counts.reduce((sum, each) => sum + (each[part] ?? 0), 0);
    return { part, count, points: count * settings.weights[part] };
  });
  return { points: parts.reduce((sum, each) => sum + each.points, 0), parts };
}

/** The grade of what several limbs play together. */
export function gradeLines(lines: readonly Line[], settings: GradeSettings): Grade {
  return gradeBy(lines, settings, countingFor(settings.handSpeed));
}

/** Grades many patterns over one ground, as {@link gradePattern} does, and works out what they share once. */
export function patternGrader(ground: Ground, settings: GradeSettings): (pattern: Pattern) => Grade {
  const counting = countingOnce(settings.handSpeed);
  return ({ bars }) => gradeBy([{ ground, cells: bars.flat() }], settings, counting);
}

/** The grade of the cells of all beats over a ground. */
export function gradeCells(ground: Ground, cells: readonly Cell[], settings: GradeSettings): Grade {
  return gradeLines([{ ground, cells }], settings);
}

/** The grade of a pattern over a ground with as many bars. */
export function gradePattern(ground: Ground, pattern: Pattern, settings: GradeSettings): Grade {
  return gradeCells(ground, pattern.bars.flat(), settings);
}

/** The grade of all that an exercise plays beside the time. */
export function gradeExercise(whole: Lesson, exercise: Exercise): Grade {
  const lesson = sectionOf(whole, exercise.number);
  return gradeLines(linesOf(lesson, exercise), gradeSettingsOf(lesson));
}
