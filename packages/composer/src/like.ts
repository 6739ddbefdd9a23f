/**
 * One bar made a step easier, a step harder, or otherwise of the same difficulty, within the lesson's vocabulary.
 *
 * Conventions: difficulty in points over the lesson's groove; what changes is said as an idea on the bar.
 * Source: common practice: a bar that does not go is thinned or turned on one beat before anything else is tried.
 */
import {
  type Cell,
  type Exercise,
  type Lesson,
  type Pattern,
  type PatternRules,
  struckSlots,
} from '@shedbook/core';
import { gradeExercise, gradeSettingsOf } from './grade.ts';
import { readGround } from './ground.ts';
import { ideaOf } from './idea.ts';
import type { IdeaFact } from './idea-fact.ts';
import { compingPart, compingPattern, withComping } from './page.ts';
import { rulesOf, vocabularyOf } from './rules.ts';
import { splitBars } from './script.ts';
import { keepsRules, pointTables } from './tables.ts';
import { beatsApart, stepsFrom } from './theme.ts';

/** Which way to go from a bar. */
export const DIRECTIONS = ['easier', 'harder', 'like'] as const;

/** A way to go from a bar. */
export type Direction = (typeof DIRECTIONS)[number];

/** A bar near another. */
export interface NearBar {
  readonly pattern: Pattern;
  /** Points of difficulty. */
  readonly points: number;
  /** What it makes of the bar that was asked about. */
  readonly what: IdeaFact;
}

/** Bars as hard as one another differ by fewer points than this: a quarter of an off-beat stroke. */
const AS_HARD = 0.25;

interface Step {
  readonly pattern: Pattern;
  readonly cells: readonly Cell[];
  readonly points: number;
  /** Beats that differ. */
  readonly apart: number;
}

function goes(direction: Direction, by: number): boolean {
  if (direction === 'like') return Math.abs(by) <= AS_HARD;
  return direction === 'easier' ? by < -AS_HARD : by > AS_HARD;
}

/** Rules by which the moves of a bar that is there may stay, whatever the limits say of new ones. */
function withOwnMoves(rules: PatternRules, bar: readonly Cell[]): PatternRules {
  const own = new Set(bar.map(({ text }, beat) => `${text} ${bar[(beat + 1) % bar.length]?.text}`));
  return {
    ...rules,
    allowsMove: (beat, from, to) =>
      own.has(`${rules.cells[from]?.text} ${rules.cells[to]?.text}`) ||
      (rules.allowsMove?.(beat, from, to) ?? true),
  };
}

/** When a pattern strikes, as beats and shares of a beat. */
function strikesOf({ bars }: Pattern): readonly number[] {
  return bars
    .flat()
    .flatMap((cell, beat) => struckSlots(cell).map((slot) => beat + slot / cell.marks.length));
}

/** Whether a pattern of the comping voice asks its limb for a stroke where another voice of the exercise has it. */
function isTaken(lesson: Lesson, exercise: Exercise, pattern: Pattern): boolean {
  const own = compingPart(lesson, exercise);
  const limb = lesson.limbs[own.voice];
  const others = exercise.parts.filter((part) => part !== own && lesson.limbs[part.voice] === limb);
  const taken = new Set(others.flatMap((part) => strikesOf(part.pattern)));
  return strikesOf(pattern).some((moment) => taken.has(moment));
}

/**
 * Bars one step from an exercise's (one beat exchanged, or displaced), the smallest change of difficulty first, `most`
 * at most; the bar itself may have cells that the vocabulary has not. What other voices of the exercise play stays and is
 * graded with it.
 */
export function barsNear(
  lesson: Lesson,
  exercise: Exercise,
  direction: Direction,
  most = 4,
): readonly NearBar[] {
  const own = compingPattern(lesson, exercise);
  const bar = own.bars.flat();
  const vocabulary = vocabularyOf(lesson);
  const known = new Set(vocabulary.map((cell) => cell.text));
  const cells = [...vocabulary, ...bar.filter((cell) => !known.has(cell.text) && known.add(cell.text))];
  const ground = readGround(lesson, own.bars.length);
  const rules = withOwnMoves(rulesOf(ground, cells, lesson.compose.limits), bar);
  const tables = pointTables(ground, cells, gradeSettingsOf(lesson));
  const strokes = cells.map((cell) => struckSlots(cell).length);
  const start = Uint16Array.from(bar, (cell) => cells.findIndex((each) => each.text === cell.text));
  const isAlone = exercise.parts.length <= 1;
  const pointsOf = (step: Uint16Array, pattern: Pattern) =>
    isAlone
      ? tables.points(step)
      : gradeExercise(lesson, { ...exercise, parts: withComping(lesson, exercise, pattern) }).points;
  const points = pointsOf(start, own);
  const steps = new Map(stepsFrom(start, vocabulary.length).map((step) => [step.join(), step]));
  return [...steps.values()]
    .filter((step) => beatsApart(step, start) > 0 && keepsRules(rules, strokes, step))
    .map((step): Step => {
      const found = Array.from(step, (index) => cells[index] as Cell);
      const pattern = splitBars(found, lesson.meter.beats.length);
      return { cells: found, pattern, points: pointsOf(step, pattern), apart: beatsApart(step, start) };
    })
    .filter((step) => goes(direction, step.points - points) && !isTaken(lesson, exercise, step.pattern))
    .sort((a, b) => a.apart - b.apart || Math.abs(a.points - points) - Math.abs(b.points - points))
    .slice(0, most)
    .map((step) => ({
      pattern: step.pattern,
      points: step.points,
      what: ideaOf(step.cells, bar, lesson.meter.beats.length),
    }));
}
