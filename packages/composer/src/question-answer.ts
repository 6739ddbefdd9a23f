/**
 * Question and answer: two bars that begin alike; the first ends open, the second comes to rest.
 *
 * Conventions: a bar ends open when its last beat is struck off the beat, and at rest when its last beat is silent
 * or struck on the beat alone.
 * Source: common practice (antecedent and consequent); the rules are ours.
 */
import { type Cell, isStruck, type Lesson, struckSlots } from '@shedbook/core';
import { type ComposeOptions, pageSource } from './compose.ts';
import { gradeSettingsOf } from './grade.ts';
import { readGround } from './ground.ts';
import { type Composition, composePage } from './page.ts';
import type { Candidate } from './pool.ts';
import { rulesOf } from './rules.ts';
import { keepsRules, pointTables } from './tables.ts';

/** Pairs looked at, at most; questions are thinned out evenly to stay within. */
const PAIRS_AT_MOST = 6_000;

function endsOpen(cell: Cell): boolean {
  return struckSlots(cell).some((slot) => slot > 0);
}

function comesToRest(cell: Cell): boolean {
  return !cell.marks.some((mark, slot) => slot > 0 && isStruck(mark));
}

function lastCell(bar: Candidate, cells: readonly Cell[]): Cell {
  return cells[bar.cells.at(-1) as number] as Cell;
}

/** Every question with every answer that begins like it, as two bars of cells. */
function pairsOf(bars: readonly Candidate[], cells: readonly Cell[]): readonly Uint16Array[] {
  const half = (bar: Candidate) => bar.cells.slice(0, Math.ceil(bar.cells.length / 2)).join();
  const answers = new Map<string, Candidate[]>();
  for (const bar of bars.filter((each) => comesToRest(lastCell(each, cells)))) {
    answers.set(half(bar), [...(answers.get(half(bar)) ?? []), bar]);
  }
  const questions = bars.filter((bar) => endsOpen(lastCell(bar, cells)));
  const pairs = questions.flatMap((question) =>
    (answers.get(half(question)) ?? []).map((answer) =>
      Uint16Array.from([...question.cells, ...answer.cells]),
    ),
  );
  const stride = Math.max(1, Math.ceil(pairs.length / PAIRS_AT_MOST));
  return pairs.filter((_, i) => i % stride === 0);
}

/** Composes a page of two-bar exercises, each a question and its answer. */
export function composeQuestions(lesson: Lesson, options: Omit<ComposeOptions, 'bars'> = {}): Composition {
  const single = pageSource(lesson, { ...options, bars: 1 });
  const { cells } = single.rules;
  const ground = readGround(lesson, 2);
  const rules = rulesOf(ground, cells, lesson.compose.limits);
  const tables = pointTables(ground, cells, gradeSettingsOf(lesson));
  const strokes = cells.map((cell) => struckSlots(cell).length);
  const candidates = pairsOf(single.pool.candidates, cells)
    .filter((pair) => keepsRules(rules, strokes, pair))
    .map((pair): Candidate => ({ cells: pair, points: tables.points(pair) }))
    .sort((a, b) => a.points - b.points);
  const pool = { candidates, allowed: BigInt(candidates.length), complete: true, grade: () => null };
  return composePage({ ...single, ground, rules, pool });
}
