/**
 * What composed pages hold, seed by seed: the lessons that are looked at, and a count of everything that a page is to have.
 *
 * Conventions: seeds below 50 000 were tuned on; rates in strokes a second at the goal tempo, counted anew from the
 * pattern texts.
 */
import { compose, FIGURES } from '@shedbook/composer';
import { COMPOSED_LESSONS } from '../internal/testing/composed-lessons.data.mjs';
import { lessonOf } from './material.mjs';

/** Rates that are published of one hand: kept up, and at most (Fujii and others 2009). */
const PUBLISHED = { kept: 7, most: 10 };

const ROUNDING = 1e-6;

const SWING = `feel: triplet
groove: { ride: x x.x x x.x, hihat-foot: . x . x, bass: x x x x }`;

/**
 * Lessons by name, with the number of exercises asked for.
 * @type {Readonly<Record<string, readonly [number, string]>>}
 */
export const CASES = {
  'swing, 4 cells': [24, `${SWING}\nvocabulary: [..., x.., ..x, x.x]`],
  'swing, 3 cells': [24, `${SWING}\nvocabulary: [x.., ..x, x.x]`],
  'swing, 5 cells': [24, `${SWING}\nvocabulary: [..., x.., .x., ..x, x.x]`],
  'swing, 6 cells': [24, `${SWING}\nvocabulary: [..., x.., .x., ..x, x.x, xx.]`],
  'swing, 8 cells': [32, `${SWING}\nvocabulary: [..., x.., .x., ..x, xx., x.x, .xx, xxx]`],
  'jazz waltz, 4 cells': [24, COMPOSED_LESSONS.waltz],
  'shuffle in 12/8, 5 cells': [24, COMPOSED_LESSONS.shuffle],
  'sixteenths, 6 cells': [24, COMPOSED_LESSONS.sixteenths],
  'funk with ghost notes, 8 cells': [24, COMPOSED_LESSONS.funk],
  'bossa, 4 cells': [24, COMPOSED_LESSONS.bossa],
  'bossa, 4 cells, two bars': [24, `${COMPOSED_LESSONS.bossa}\ncompose: { bars: 2 }`],
};

/** @typedef {readonly (readonly string[])[]} Bars */

/**
 * On how many beats two bars differ, the second displaced by beats.
 * @param {readonly string[]} a
 * @param {readonly string[]} b
 */
function apart(a, b, later = 0) {
  return a.filter((cell, beat) => cell !== b[(beat + b.length - later) % b.length]).length;
}

/**
 * The same, displaced as suits best.
 * @param {readonly string[]} a
 * @param {readonly string[]} b
 */
function apartDisplaced(a, b) {
  return Math.min(...b.map((_, later) => apart(a, b, later)));
}

/**
 * Beats on which bars differ from one of them, all together.
 * @param {Bars} bars
 * @param {readonly string[]} theme
 */
function strayed(bars, theme) {
  return bars.reduce((sum, bar) => sum + apartDisplaced(bar, theme), 0);
}

/**
 * The fastest two and three strokes of a looped bar, in strokes a second.
 * @param {readonly string[]} bar
 * @param {import('@shedbook/core').Lesson} lesson
 */
function rates(bar, lesson) {
  const { meter, tempo, feel } = lesson;
  const beat = (meter.bar.num / meter.bar.den / meter.beats.length) * (240 / tempo.goalBpm);
  const swung = JSON.stringify(feel).includes('triplet') ? 2 / 3 : 1 / 2;
  const times = bar.flatMap((cell, at) =>
    [...cell].flatMap((mark, slot) => {
      const phase = cell.length === 2 && slot === 1 ? swung : slot / cell.length;
      return mark === '.' ? [] : [(at + phase) * beat];
    }),
  );
  const looped = [...times, ...times.map((time) => time + bar.length * beat)];
  const over = (/** @type {number} */ more) =>
    times.length <= more ? 0 : more / Math.min(...times.map((time, i) => (looped[i + more] ?? 0) - time));
  return { two: over(1), three: over(2) };
}

/** An empty count. */
function nothing() {
  return {
    pages: 0,
    possible: 0,
    allMoves: 0,
    falls: 0,
    stepsOver: 0,
    short: 0,
    alike: 0,
    changed: 0,
    lines: 0,
    blocks: 0,
    themesFound: 0,
    themesFirst: 0,
    themesNamed: 0,
    displacing: 0,
    nearlyDisplacing: 0,
    ends: 0,
    joined: 0,
    columns: 0,
    figures: 0,
    notQuoted: 0,
    fast: 0,
    doubles: 0,
    distinct: 0,
    ms: 0,
  };
}

/** @typedef {ReturnType<typeof nothing>} Sums */

/**
 * Adds what the lines of a block make of its theme: whether one displaces it, as it is or but for a beat, and whether the last takes a beat or two
 * from the theme before.
 * @param {Sums} sums
 * @param {Bars} own
 * @param {readonly string[]} theme
 * @param {readonly string[] | null} before
 */
function addIdeas(sums, own, theme, before) {
  if (own.some((bar) => apart(bar, theme) > 0 && apartDisplaced(bar, theme) === 0)) sums.displacing += 1;
  if (own.some((bar) => apart(bar, theme) > 1 && apartDisplaced(bar, theme) <= 1)) sums.nearlyDisplacing += 1;
  if (!before) return;
  sums.ends += 1;
  const end = own.at(-1) ?? [];
  const from = end.flatMap((cell, beat) => (cell === theme[beat] ? [] : [beat]));
  if (from.length > 0 && from.length <= 2 && from.every((beat) => end[beat] === before[beat]))
    sums.joined += 1;
}

/**
 * Adds blocks: beats changed, and whether a plain matcher finds the theme from the bars alone.
 * @param {Sums} sums
 * @param {import('@shedbook/composer').ComposeReport} report
 * @param {Bars} bars
 */
function addBlocks(sums, { blocks }, bars) {
  /** @type {readonly string[] | null} */
  let before = null;
  for (const { first, last, theme, heading } of blocks) {
    const own = bars.slice(first - 1, last);
    own.slice(1).forEach((bar, i) => {
      sums.changed += apart(bar, own[i] ?? []);
      sums.lines += 1;
    });
    const least = Math.min(...own.map((bar) => strayed(own, bar)));
    sums.blocks += 1;
    const cells = theme?.replaceAll('| ', '').split(' ');
    if (!cells) continue;
    if (own[0]?.join() === cells.join()) sums.themesFirst += 1;
    if (strayed(own, cells) === least) sums.themesFound += 1;
    if (/^figure-|^theme-(drilled|figures)$/.test(heading?.fact ?? '')) sums.themesNamed += 1;
    addIdeas(sums, own, cells, before);
    before = cells;
  }
}

/**
 * Adds how long the longest column of one first cell is, and which figures are missing.
 * @param {Sums} sums
 * @param {import('@shedbook/core').Lesson} lesson
 * @param {Bars} bars
 */
function addLooks(sums, lesson, bars) {
  let run = 0;
  let longest = 0;
  bars.forEach((bar, i) => {
    run = bar[0] === bars[i - 1]?.[0] ? run + 1 : 1;
    longest = Math.max(longest, run);
  });
  sums.columns += longest;
  if (lesson.compose.bars > 1) return;
  const known = new Set(lesson.vocabulary.map((each) => each.cell.text));
  const texts = new Set(bars.map((bar) => bar.join(' ')));
  const writable = FIGURES.map((figure) => figure.text).filter((text) => {
    const cells = text.split(' ');
    return cells.length === lesson.meter.beats.length && cells.every((cell) => known.has(cell));
  });
  sums.figures += writable.length;
  sums.notQuoted += writable.filter((text) => !texts.has(text)).length;
}

/**
 * Everything counted over so many pages of a lesson.
 * @param {readonly [number, string]} page number of exercises, and the lesson without its title
 * @param {{ readonly seeds: number, readonly from: number }} range
 * @returns {Sums}
 */
export function countPages([count, text], { seeds, from }) {
  const lesson = lessonOf(`title: Figures\n${text}\n`);
  const sums = nothing();
  const pages = new Set();
  const start = process.cpuUsage();
  for (let seed = from; seed < from + seeds; seed += 1) {
    const { report } = compose(lesson, { count, seed });
    const { coverage, difficulty } = report;
    const bars = report.bars.map((bar) => bar.text.replaceAll('| ', '').split(' '));
    const texts = report.bars.map((bar) => bar.text);
    sums.possible = coverage.possible;
    sums.allMoves += coverage.missed.length === 0 ? 1 : 0;
    sums.falls += difficulty.falls.length;
    sums.stepsOver += difficulty.largestStep > difficulty.stepBound + ROUNDING ? 1 : 0;
    sums.short += report.count < count ? 1 : 0;
    sums.alike += texts.length - new Set(texts).size;
    addBlocks(sums, report, bars);
    addLooks(sums, lesson, bars);
    for (const bar of bars) {
      const { two, three } = rates(bar, lesson);
      if (three > PUBLISHED.kept + ROUNDING || two > PUBLISHED.most + ROUNDING) sums.fast += 1;
      else if (two > PUBLISHED.kept + ROUNDING) sums.doubles += 1;
    }
    pages.add(texts.join('/'));
  }
  const { user, system } = process.cpuUsage(start);
  return { ...sums, pages: seeds, distinct: pages.size, ms: (user + system) / 1000 / seeds };
}

/**
 * A count in one line.
 * @param {Sums} sums
 */
export function sayCount(sums) {
  const { pages, possible, allMoves, falls, stepsOver, short, alike, changed, lines, blocks, themesFound } =
    sums;
  return [
    `all ${possible} moves ${allMoves} of ${pages}`,
    `beats changed ${(changed / lines).toFixed(2)}`,
    `themes found ${themesFound} of ${blocks}, ${sums.themesFirst} of them first`,
    `figures as themes ${sums.themesNamed}, displaced in ${sums.displacing} blocks, or but for a beat in ${sums.nearlyDisplacing}, ${sums.joined} of ${sums.ends} last lines join`,
    `figures missing ${sums.notQuoted} of ${sums.figures}`,
    `above a hand's rate ${sums.fast} (double strokes ${sums.doubles})`,
    `falls ${falls}, steps over ${stepsOver}, alike ${alike}, short ${short}`,
    `column ${(sums.columns / pages).toFixed(1)}`,
    `pages ${sums.distinct}`,
    `${sums.ms.toFixed(0)} ms`,
  ].join(', ');
}
