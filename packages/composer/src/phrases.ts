/**
 * Pages of phrases: exercises of two, four or eight bars that a grammar holds together, graded as phrases.
 *
 * Conventions: exercises count from 1; difficulty in points.
 */
import { type PhraseForm, struckSlots } from '@shedbook/core';
import { someOf } from './bar-store.ts';
import { gradeSettingsOf } from './grade.ts';
import { readGround } from './ground.ts';
import { type Composition, composePage, type PageSource } from './page.ts';
import { PHRASE_BARS, spellPhrases } from './phrase-grammar.ts';
import type { Candidate } from './pool.ts';
import { rulesOf } from './rules.ts';
import { keepsRules, pointTables } from './tables.ts';

/** Bars that phrases are begun with. */
const FIRSTS = 400;

/** Phrases that a page is chosen from, at most. */
const PHRASES_AT_MOST = 4_000;

/** The number of bars of a form that is nearest to one. */
export function phraseBars(form: PhraseForm, bars: number): number {
  return PHRASE_BARS[form].reduce((best, each) =>
    Math.abs(each - bars) < Math.abs(best - bars) ? each : best,
  );
}

/** Composes a page of phrases from the source of a page of single bars. */
export function phrasePage(single: PageSource, form: PhraseForm, wanted: number): Composition {
  const { lesson, random, rules: inBar } = single;
  const bars = phraseBars(form, wanted);
  const ground = readGround(lesson, bars);
  const rules = rulesOf(ground, inBar.cells, lesson.compose.limits);
  const tables = pointTables(ground, inBar.cells, gradeSettingsOf(lesson));
  const strokes = inBar.cells.map((cell) => struckSlots(cell).length);
  const tongue = {
    cells: inBar.cells,
    beats: inBar.beats,
    allows: (beat: number, cell: number) => rules.allows?.(beat, cell) ?? true,
    some: <T>(list: readonly T[], most: number) => someOf(list, most, random),
  };
  const firsts = someOf(single.pool.candidates, FIRSTS, random).map((each) => each.cells);
  const phrases = new Map(spellPhrases(tongue, form, bars, firsts).map((cells) => [cells.join(), cells]));
  const candidates = someOf([...phrases.values()], PHRASES_AT_MOST, random)
    .filter((cells) => keepsRules(rules, strokes, cells))
    .map((cells): Candidate => ({ cells, points: tables.points(cells) }))
    .sort((a, b) => a.points - b.points);
  const pool = { candidates, allowed: BigInt(candidates.length), complete: true, grade: () => null };
  return composePage({ ...single, ground, rules, pool, isPlain: true });
}
