/**
 * From a vocabulary to a graded page: `compose` is what the command line, the desk and the demo call.
 *
 * Conventions: exercises count from 1; difficulty in points; the same lesson, count and seed always give the same
 * page.
 */
import { type Exercise, formatPattern, type Lesson, type PhraseForm, seededRandom } from '@shedbook/core';
import { gradeSettingsOf } from './grade.ts';
import { readGround } from './ground.ts';
import { type Composition, compingPattern, composePage, type PageSource } from './page.ts';
import { phrasePage } from './phrases.ts';
import { fillPool } from './pool.ts';
import { rulesOf, vocabularyOf } from './rules.ts';
import { soloScript } from './script.ts';
import { pointTables } from './tables.ts';

/** What to compose; what is left out is said by the lesson's `compose:`. */
export interface ComposeOptions {
  /** How many exercises, kept ones included. */
  readonly count?: number;
  readonly seed?: number | string;
  /** Numbers of exercises that stay in their places, beside those that the lesson itself keeps. */
  readonly keep?: readonly number[];
  /** Bars in an exercise. */
  readonly bars?: number;
  /** What holds the bars of an exercise together, or null for nothing. */
  readonly phrase?: PhraseForm | null;
  /** How far the page quotes figures of the trade: 0 not at all, every move counts; 1 as far as it can. */
  readonly idiom?: number;
}

/** Numbers of the exercises that stay: those that the lesson keeps, and those that are named. */
export function keptNumbers(lesson: Lesson, named: readonly number[] = []): readonly number[] {
  return lesson.exercises
    .filter(({ keep, number }) => keep || named.includes(number))
    .map(({ number }) => number);
}

/** Everything a page is made from, for a lesson and options. */
export function pageSource(lesson: Lesson, options: ComposeOptions): PageSource {
  const { compose: settings } = lesson;
  const seed = options.seed ?? settings.seed;
  const random = seededRandom(seed);
  const ground = readGround(lesson, options.bars ?? settings.bars);
  const vocabulary = vocabularyOf(lesson);
  const rules = rulesOf(ground, vocabulary, settings.limits);
  const tables = pointTables(ground, vocabulary, gradeSettingsOf(lesson));
  return {
    lesson,
    ground,
    rules,
    script: soloScript(lesson, ground),
    pool: fillPool(tables, rules, random, settings.limits.difficulty),
    count: options.count ?? settings.count,
    seed,
    random,
    keep: keptNumbers(lesson, options.keep),
    idiom: options.idiom ?? settings.idiom,
  };
}

/**
 * Composes a page for a lesson.
 * @returns fewer exercises than asked where the limits leave fewer bars; `report.notes` says what could not be had.
 */
export function compose(lesson: Lesson, options: ComposeOptions = {}): Composition {
  const phrase = options.phrase === undefined ? lesson.compose.phrase : options.phrase;
  if (phrase === null) return composePage(pageSource(lesson, options));
  const bars = options.bars ?? lesson.compose.bars;
  return phrasePage(pageSource(lesson, { ...options, bars: 1 }), phrase, bars);
}

/** The comping voice's pattern text of every exercise. */
export function patternTexts(lesson: Lesson, exercises: readonly Exercise[]): readonly string[] {
  return exercises.map((exercise) => formatPattern(compingPattern(lesson, exercise)));
}
