/**
 * What composed pages hold, how rated rhythms are ordered, how long a page takes, and how much memory a search among
 * millions of bars holds. `SEEDS=1000 npm run bench composer` looks at a thousand pages of each lesson.
 */

import { loadavg } from 'node:os';
import { compose } from '@shedbook/composer';
import { countPatterns, parseLesson } from '@shedbook/core';
import { median } from '@shedbook/signal';
import { CASES, countPages, sayCount } from './composer-pages.mjs';
import { ratingRows } from './composer-ratings.mjs';

/** Name of the bench. */
export const name = 'composer';

const SWING = `title: Bench
feel: triplet
groove: { ride: x x.x x x.x, hihat-foot: . x . x, bass: x x x x }
`;
const FOUR = `${SWING}vocabulary: [..., x.., ..x, x.x]\n`;
const EIGHT = `${SWING}vocabulary: [..., x.., .x., ..x, xx., x.x, .xx, xxx]\n`;
const EIGHT_TWO_BARS = `${EIGHT}compose: { bars: 2, limits: { strokes: { least: 0 } } }\n`;

function lessonOf(text) {
  const { lesson, problems } = parseLesson(text, 'bench');
  if (!lesson) throw new Error(JSON.stringify(problems));
  return lesson;
}

/** Pages of each lesson, and the seed of the first: what is below 50 000 was tuned on. */
const PAGES = { seeds: Number(process.env.SEEDS ?? 20), from: 60_000 };

/** Milliseconds of processor time, and on the wall, that something takes. */
function timed(work) {
  const [start, wallStart] = [process.cpuUsage(), performance.now()];
  work();
  const { user, system } = process.cpuUsage(start);
  return { ms: (user + system) / 1000, wallMs: performance.now() - wallStart };
}

/** Median milliseconds of `times` pages, after as many to warm up, and the first page of all. */
function timePages(text, count, times) {
  const lesson = lessonOf(text);
  const pages = Array.from({ length: 2 * times }, (_, seed) => timed(() => compose(lesson, { count, seed })));
  const warm = pages.slice(times);
  const wallMs = median(warm.map((page) => page.wallMs));
  const load = loadavg()[0]?.toFixed(1);
  const note = `processor; on the wall ${wallMs.toFixed(1)} ms, at a load of ${load}`;
  return { first: pages[0]?.ms, median: median(warm.map(({ ms }) => ms)), note };
}

/** Largest growth of the heap while composing, in MB, looked at after every page. */
function heapGrowth(text, count, times) {
  const lesson = lessonOf(text);
  compose(lesson, { count, seed: 0 });
  const before = process.memoryUsage().heapUsed;
  let most = 0;
  for (let seed = 0; seed < times; seed += 1) {
    compose(lesson, { count, seed });
    most = Math.max(most, process.memoryUsage().heapUsed - before);
  }
  return most / 2 ** 20;
}

/** The rows of the bench. */
export async function run() {
  const four = timePages(FOUR, 24, 40);
  const two = timePages(EIGHT_TWO_BARS, 32, 10);
  const eight = timePages(EIGHT, 32, 20);
  const cells = lessonOf(EIGHT).vocabulary.map((each) => each.cell);
  const start = performance.now();
  const bars = countPatterns({ cells, beats: 4, bars: 2 });
  const counted = performance.now() - start;
  const pages = Object.entries(CASES).map(([what, page]) => {
    const sums = countPages(page, PAGES);
    return {
      what: `${what}, ${page[0]} bars: beats changed to the next line`,
      value: sums.changed / sums.lines,
      unit: 'beats',
      note: sayCount(sums),
    };
  });
  return [
    ...pages,
    ...ratingRows(),
    { what: 'four cells, 24 bars, first page of the process', value: four.first, unit: 'ms' },
    { what: 'four cells, 24 bars', value: four.median, unit: 'ms', note: four.note },
    { what: 'eight cells, 32 bars', value: eight.median, unit: 'ms', note: eight.note },
    { what: `eight cells, two bars (${bars} candidates), 32 bars, first page`, value: two.first, unit: 'ms' },
    {
      what: `eight cells, two bars (${bars} candidates), 32 bars`,
      value: two.median,
      unit: 'ms',
      note: two.note,
    },
    {
      what: 'the same: largest growth of the heap over 10 pages',
      value: heapGrowth(EIGHT_TWO_BARS, 32, 10),
      unit: 'MB',
    },
    { what: `counting the ${bars} candidates`, value: counted, unit: 'ms' },
  ];
}
