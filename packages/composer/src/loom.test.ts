import { seededRandom } from '@shedbook/core';
import { expect, it } from 'vitest';
import { lessonOf } from '../test/lessons.ts';
import { compose, pageSource } from './compose.ts';
import { count, FORMING, loomWith } from './loom.ts';
import { alphabetOf, pageBar } from './page-bar.ts';
import type { PageAim } from './page-cost.ts';

it('[CO54] counts lines that come and go as counting the page anew does', () => {
  const source = pageSource(lessonOf('swing of five cells'), { seed: 1 });
  const alphabet = alphabetOf(source.rules.cells, []);
  const bars = source.pool.candidates.map(({ cells, points }) => pageBar(alphabet, cells, points));
  const aim: PageAim = {
    alphabet,
    moves: [...new Set(bars.flatMap((bar) => bar.moves))],
    figures: new Set(bars.slice(0, 8)),
    stepBound: 1,
    beats: 4,
    evenStep: 0.3,
    range: [0, 9],
    mayStart: (cell) => cell !== 1,
  };
  const random = seededRandom(5);
  const draw = () => bars[random.below(bars.length)] ?? bars[0];
  const page = Array.from({ length: 12 }, draw).flatMap((bar) => bar ?? []);
  const warp = { aim, blocks: [], page, isThemed: false, need: 1, gains: FORMING };
  const loom = loomWith(warp);
  for (let i = 0; i < 200; i += 1) {
    const place = random.below(page.length);
    const [old, bar] = [page[place], draw()];
    if (!old || !bar) continue;
    count(loom, old, -1);
    count(loom, bar, 1);
    page[place] = bar;
    // definition: the plain count of the same page
    expect(loom.tally).toEqual(loomWith(warp).tally);
  }
});

it('[CO35] a block has two lines at least, six at most, and every line is in one', () => {
  const { report } = compose(lessonOf('swing of five cells'), { count: 24, seed: 4 });
  const lines = report.blocks.flatMap(({ first, last }) =>
    Array.from({ length: last - first + 1 }, (_, i) => first + i),
  );
  // definition: 1 to 24 in order
  expect(lines).toEqual(Array.from({ length: 24 }, (_, i) => i + 1));
  for (const { first, last } of report.blocks) {
    expect(last - first + 1).toBeGreaterThanOrEqual(2);
    expect(last - first + 1).toBeLessThanOrEqual(6);
  }
});
