/**
 * Pages of phrases: exercises of two, four or eight bars that a grammar holds together, graded as phrases.
 *
 * Conventions: exercises count from 1; difficulty in points.
 */
import { type PhraseForm, struckSlots } from '@shedbook/core';
import { someOf } from './bar-store.ts';
import { gradeSettingsOf } from './grade.ts';
import { readGround } from './ground.ts';
import { type Composition, composePage, type PageSource, STEPS_IN_ONE } from './page.ts';
import { PHRASE_BARS, spellPhrases } from './phrase-grammar.ts';
import type { Candidate } from './pool.ts';
import { rulesOf } from './rules.ts';
import { keepsRules, pointTables } from './tables.ts';

/** Bars that phrases are begun with. */
const FIRSTS = 400;

/** Phrases that a page is chosen from, at most. */
const PHRASES_AT_MOST = 4_000;

/** Steps of difficulty by which a bar of a phrase may be harder than the one before it: as few as leave every move. */
const JUMPS = [3, 4, 6, 9, Number.POSITIVE_INFINITY] as const;

/** A page has this many times its phrases to choose from. */
const PLENTY = 4;

/** A page with this many times the beats that all moves need is free to stop early: most of a phrase comes again. */
const FREE_TO_STOP = 3;

/** A phrase among others. */
interface Phrase extends Candidate {
  /** Points by which a bar, looped by itself, is harder than the one before it, at most. */
  readonly jump: number;
}

/** What is asked of a choice of phrases. */
interface Choice {
  /** Cells of the vocabulary. */
  readonly kinds: number;
  /** Exercises of the page. */
  readonly count: number;
  /** A step of difficulty for a phrase, in points. */
  readonly step: number;
}

/** Notes the moves of a phrase, looped. */
function seeMoves({ cells }: Candidate, kinds: number, seen: Set<number>): void {
  cells.forEach((cell, beat) => {
    seen.add(cell * kinds + (cells[(beat + 1) % cells.length] as number));
  });
}

function movesIn(phrases: readonly Candidate[], kinds: number): number {
  const seen = new Set<number>();
  for (const phrase of phrases) seeMoves(phrase, kinds, seen);
  return seen.size;
}

/** The phrases without great jumps of difficulty inside, where they leave plenty and every move. */
function calmest(phrases: readonly Phrase[], { kinds, count }: Choice, step: number): readonly Phrase[] {
  const all = movesIn(phrases, kinds);
  for (const jump of JUMPS) {
    const calm = phrases.filter((phrase) => phrase.jump <= jump * step);
    if (calm.length >= PLENTY * count && movesIn(calm, kinds) === all) return calm;
  }
  return phrases;
}

/**
 * The easier phrases, as far as every move asks for, and as the page climbs when its largest step is a step a bar.
 */
function withinReach(phrases: readonly Phrase[], { kinds, count, step }: Choice): readonly Phrase[] {
  const all = movesIn(phrases, kinds);
  const beats = phrases[0]?.cells.length ?? 0;
  if (count * beats <= FREE_TO_STOP * all) return phrases;
  const seen = new Set<number>();
  const most = (phrases[0]?.points ?? 0) + ((count - 1) * step) / STEPS_IN_ONE;
  const end = phrases.findIndex((phrase, i) => {
    seeMoves(phrase, kinds, seen);
    return seen.size === all && i + 1 >= PLENTY * count && phrase.points >= most;
  });
  return end < 0 ? phrases : phrases.slice(0, end + 1);
}

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
  const alone = pointTables(single.ground, inBar.cells, gradeSettingsOf(lesson));
  const jumpOf = (cells: Uint16Array) => {
    const points = Array.from({ length: bars }, (_, bar) =>
      alone.points(cells.subarray(bar * inBar.beats, (bar + 1) * inBar.beats)),
    );
    return Math.max(0, ...points.slice(1).map((each, bar) => each - (points[bar] as number)));
  };
  const written = someOf([...phrases.values()], PHRASES_AT_MOST, random)
    .filter((cells) => keepsRules(rules, strokes, cells))
    .map((cells): Phrase => ({ cells, points: tables.points(cells), jump: jumpOf(cells) }))
    .sort((a, b) => a.points - b.points);
  const { step } = lesson.compose.limits;
  const choice = { kinds: inBar.cells.length, count: single.count, step: step * bars };
  const candidates = withinReach(calmest(written, choice, step), choice);
  const pool = { candidates, allowed: BigInt(written.length), complete: true, grade: () => null };
  return composePage({ ...single, ground, rules, pool, isPlain: true });
}
