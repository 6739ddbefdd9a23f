/**
 * What the composer reaches for every seed of a thousand, over grooves and vocabularies of many kinds.
 *
 * `node bench/composer-figures.mjs [SEEDS] [NAME] [FROM]` after a build (the first 120 seeds were tuned on); a thousand seeds take a few minutes.
 */
import { compose, FIGURES } from '@shedbook/composer';
import { lessonOf } from './material.mjs';

const SWING = `feel: triplet
groove: { ride: x x.x x x.x, hihat-foot: . x . x, bass: x x x x }`;

/**
 * Lessons by name, with the number of exercises asked for.
 * @type {Readonly<Record<string, readonly [number, string]>>}
 */
const CASES = {
  'swing, 4 cells': [24, `${SWING}\nvocabulary: [..., x.., ..x, x.x]`],
  'swing, 3 cells': [24, `${SWING}\nvocabulary: [x.., ..x, x.x]`],
  'swing, 5 cells': [24, `${SWING}\nvocabulary: [..., x.., .x., ..x, x.x]`],
  'swing, 6 cells': [24, `${SWING}\nvocabulary: [..., x.., .x., ..x, x.x, xx.]`],
  'swing, 8 cells': [32, `${SWING}\nvocabulary: [..., x.., .x., ..x, xx., x.x, .xx, xxx]`],
  'jazz waltz, 4 cells': [
    24,
    'meter: 3/4\nfeel: triplet\ngroove: { ride: x x.x x, hihat-foot: . x ., bass: x . . }\nvocabulary: [..., x.., ..x, x.x]',
  ],
  'shuffle in 12/8, 5 cells': [
    24,
    'meter: 12/8\ngroove: { ride: x.x x.x x.x x.x, hihat-foot: . x . x, bass: x . x . }\nvocabulary: [..., x.., ..x, x.x, .xx]',
  ],
  'sixteenths, 6 cells': [
    24,
    'feel: even\ntempo: 72\ngroove: { hihat: x.x. x.x. x.x. x.x., bass: x . x . }\nvocabulary: [...., x..., ..x., ...x, x..x, .x..]',
  ],
  'funk with ghost notes, 8 cells': [
    24,
    `feel: even
tempo: 72
groove: { hihat: x.x. x.x. x.x. x.x., bass: x... ..x. x... ..x. }
vocabulary: [...., .g.., ...g, .g.g, ..g., X..., X..g, X.g.]
compose:
  limits:
    beats:
      1: [...., .g.., ...g, .g.g, ..g.]
      2: [X..., X..g, X.g.]
      3: [...., .g.., ...g, .g.g, ..g.]
      4: [X..., X..g, X.g.]`,
  ],
  'bossa, 4 cells': [
    24,
    'feel: even\ntempo: 112\ncomping: sidestick\ngroove: { hihat: xx xx xx xx, hihat-foot: . x . x, bass: x. .x x. .x }\nvocabulary: [.., x., .x, xx]',
  ],
  'bossa, 4 cells, two bars': [
    24,
    'feel: even\ntempo: 112\ncomping: sidestick\ngroove: { hihat: xx xx xx xx, hihat-foot: . x . x, bass: x. .x x. .x }\nvocabulary: [.., x., .x, xx]\ncompose: { bars: 2 }',
  ],
};

/** Adds what a page has of themes, columns and figures. */
function tally(sums, report, lesson) {
  const bars = report.bars.map((bar) => bar.text.replaceAll('| ', '').split(' '));
  for (const { first, last, theme } of report.blocks) {
    if (theme === null) sums.unthemed += 1;
    for (let i = first; i < last; i += 1) {
      sums.changed += bars[i].filter((cell, beat) => cell !== bars[i - 1][beat]).length;
      sums.lines += 1;
    }
  }
  let run = 0;
  let longest = 0;
  bars.forEach((bar, i) => {
    run = bar[0] === bars[i - 1]?.[0] ? run + 1 : 1;
    longest = Math.max(longest, run);
  });
  sums.columns += longest;
  const texts = new Set(report.bars.map((bar) => bar.text));
  const known = new Set(lesson.vocabulary.map((each) => each.cell.text));
  const beats = lesson.meter.beats.length;
  const writable = FIGURES.map((figure) => figure.text).filter((text) => {
    const cells = text.split(' ');
    return cells.length === beats && cells.every((cell) => known.has(cell));
  });
  sums.unquoted += lesson.compose.bars > 1 ? 0 : writable.filter((text) => !texts.has(text)).length;
  sums.fast += report.notes.filter((note) => note.fact === 'fast-pairs').length;
}

const [seeds = 1000, wanted = '', from = 0] = process.argv.slice(2);
for (const [name, [count, text]] of Object.entries(CASES).filter(([each]) => each.includes(wanted))) {
  const lesson = lessonOf(`title: Figures\n${text}\n`);
  const sums = {
    full: 0,
    falls: 0,
    over: 0,
    changed: 0,
    lines: 0,
    columns: 0,
    unthemed: 0,
    unquoted: 0,
    fast: 0,
    short: 0,
    alike: 0,
  };
  let least = Number.POSITIVE_INFINITY;
  let step = 0;
  let bound = 0;
  let possible = 0;
  const pages = new Set();
  const start = performance.now();
  for (let seed = Number(from); seed < Number(from) + Number(seeds); seed += 1) {
    const { report } = compose(lesson, { count, seed });
    const { coverage, difficulty } = report;
    possible = coverage.possible;
    least = Math.min(least, coverage.met);
    step = Math.max(step, difficulty.largestStep);
    bound = Math.max(bound, difficulty.stepBound);
    sums.full += coverage.missed.length === 0 ? 1 : 0;
    sums.falls += difficulty.falls.length;
    sums.over += difficulty.largestStep > difficulty.stepBound + 1e-6 ? 1 : 0;
    tally(sums, report, lesson);
    sums.short += report.count < count ? 1 : 0;
    const texts = report.bars.map((bar) => bar.text);
    sums.alike += texts.length - new Set(texts).size;
    pages.add(texts.join('/'));
  }
  const ms = (performance.now() - start) / Number(seeds);
  console.log(
    `${name.padEnd(32)} ${count} bars: all ${possible} moves ${sums.full}/${seeds} (least ${least}), falls ${sums.falls}, ` +
      `largest step ${step.toFixed(2)} of ${bound.toFixed(2)}, above ${sums.over}, beats changed in a block ${(sums.changed / sums.lines).toFixed(2)}, ` +
      `longest column ${(sums.columns / Number(seeds)).toFixed(1)}, blocks without a theme ${sums.unthemed}, figures not quoted ${sums.unquoted}, above a hand's rate ${sums.fast}, ` +
      `alike ${sums.alike}, short ${sums.short}, pages ${pages.size}, ${ms.toFixed(1)} ms each`,
  );
}
