/**
 * Dialogue: a graded page for two limbs, in which the comping voice and another one share one rhythm.
 *
 * Conventions: the alphabet is every way to share a cell of the vocabulary; each limb strikes in every exercise. All
 * moves between ways would fill books, so the page meets the simplest first, as many as it has room for, and a note
 * says how many are left.
 */
import {
  createPatternCounter,
  type LeadDb,
  type Lesson,
  type PatternRules,
  seededRandom,
  struckSlots,
  type Voice,
} from '@shedbook/core';
import { type ComposeOptions, keptNumbers } from './compose.ts';
import { gradeSettingsOf } from './grade.ts';
import { readGround } from './ground.ts';
import { type Composition, composePage } from './page.ts';
import { type Candidate, fillPool, type Pool } from './pool.ts';
import { rulesOf, vocabularyOf } from './rules.ts';
import { dialogueScript, jointCells, type Script } from './script.ts';
import { pointTables } from './tables.ts';

/** Moves that a page sets out to meet, as a share of its beats. */
const SHARE_OF_BEATS = 0.5;

/** The voices that can answer the comping voice: those of other limbs that do not carry the time. */
export function answeringVoices(lesson: Lesson): readonly Voice[] {
  const voices = Object.keys(lesson.limbs) as Voice[];
  const taken = new Set([lesson.limbs[lesson.comping], lesson.limbs[lesson.lead]]);
  return voices.filter((voice) => !taken.has(lesson.limbs[voice]));
}

/** How much softer than the comping voice an answer may be before it is hardly one, in dB. */
const SOFT_DB = 6;

/** The level at which a voice answers in exercises, in dB relative to the lead voice, where it would be too soft; else null. */
export function answeringLevel(lesson: Lesson, answering: Voice): LeadDb | null {
  const levelDb = lesson.exerciseBalance[lesson.comping];
  return lesson.exerciseBalance[answering] < levelDb - SOFT_DB ? levelDb : null;
}

/** For each line of a cell, whether it is silent. */
function silenceOf(script: Script, rules: PatternRules): readonly (readonly boolean[])[] {
  return rules.cells.map((each) => script.lines(each).map((line) => struckSlots(line.cell).length === 0));
}

/** How many bars the rules allow in which some lines are silent. */
function countWithout(
  rules: PatternRules,
  silence: readonly (readonly boolean[])[],
  lines: readonly number[],
): bigint {
  const allows = (beat: number, index: number) =>
    (rules.allows?.(beat, index) ?? true) && lines.every((line) => silence[index]?.[line]);
  return createPatternCounter({ ...rules, allows }).total;
}

/** The pool without bars in which a limb is silent. */
function ofBoth(pool: Pool, rules: PatternRules, script: Script): Pool {
  const silence = silenceOf(script, rules);
  const plays = (cells: Uint16Array, line: number) => cells.some((index) => !silence[index]?.[line]);
  const both = (cells: Uint16Array) => plays(cells, 0) && plays(cells, 1);
  const without = (...lines: readonly number[]) => countWithout(rules, silence, lines);
  return {
    ...pool,
    candidates: pool.candidates.filter(({ cells }) => both(cells)),
    allowed: pool.allowed - without(0) - without(1) + without(0, 1),
    grade: (cells) => (both(cells) ? pool.grade(cells) : null),
  };
}

/** Every move that a candidate has, the simplest first: by strokes of both limbs, then in the order of the alphabet. */
function movesByStrokes(rules: PatternRules, script: Script, candidates: readonly Candidate[]) {
  const n = rules.cells.length;
  const strokes = rules.cells.map((each) =>
    script.lines(each).reduce((sum, line) => sum + struckSlots(line.cell).length, 0),
  );
  const met = new Set<number>();
  for (const { cells } of candidates) {
    for (const [beat, from] of cells.entries())
      met.add(from * n + (cells[(beat + 1) % cells.length] as number));
  }
  const cost = (move: number) => (strokes[Math.floor(move / n)] ?? 0) + (strokes[move % n] ?? 0);
  return [...met]
    .sort((a, b) => cost(a) - cost(b) || a - b)
    .map((move) => [Math.floor(move / n), move % n] as const);
}

/**
 * Composes a page on which the comping voice and another one are in dialogue.
 * @param answering one of {@link answeringVoices}: another's limb is taken, and no bar is left
 */
export function composeDialogue(lesson: Lesson, answering: Voice, options: ComposeOptions = {}): Composition {
  const { compose: settings } = lesson;
  const bars = options.bars ?? settings.bars;
  const voices = [lesson.comping, answering] as const;
  const groundFor = (comping: Voice) => readGround({ ...lesson, comping }, bars, voices);
  const grounds = [groundFor(voices[0]), groundFor(voices[1])] as const;
  const [ground] = grounds;
  const script = dialogueScript(lesson, voices, grounds);
  const cells = jointCells(vocabularyOf(lesson), voices);
  const rules = rulesOf(ground, cells, settings.limits, script);
  const tables = pointTables(ground, cells, gradeSettingsOf(lesson), script);
  const seed = options.seed ?? settings.seed;
  const random = seededRandom(seed);
  const pool = ofBoth(fillPool(tables, rules, random, settings.limits.difficulty), rules, script);
  const count = options.count ?? settings.count;
  const all = movesByStrokes(rules, script, pool.candidates);
  const moves = all.slice(0, Math.floor(count * ground.length * SHARE_OF_BEATS));
  const { exercises, report } = composePage({
    ...{ lesson, ground, rules, pool, script, count, seed, random, moves },
    keep: keptNumbers(lesson, options.keep),
    idiom: options.idiom ?? settings.idiom,
  });
  const left = all.length - moves.length;
  const notes =
    left > 0 ? [...report.notes, { fact: 'moves-for-later', moves: left } as const] : report.notes;
  return { exercises, report: { ...report, notes } };
}
