import { expect, it } from 'vitest';
import { fonts } from '../../test/setup.ts';
import type { FlowBlock, SheetContext } from './context.ts';
import { paginate } from './paginate.ts';
import { layOutProse } from './prose-blocks.ts';

const block = (heightMm: number, more: Partial<FlowBlock> = {}): FlowBlock => ({
  ...{ gapMm: 0, heightMm, items: [] },
  ...more,
});

/** A row of an exercise that begins with a bar. */
const row = (bar: number): FlowBlock => {
  const line = { exercise: 1, opens: bar === 1, slots: () => [] };
  return block(20, { places: [{ ...line, xMm: 0, yMm: 0, widthMm: 180, heightMm: 20 }] });
};

const startsOf = (blocks: readonly FlowBlock[], heightMm = 100) =>
  paginate(blocks, { heightMm, perPage: null })?.map(({ from }) => from);

/** Only what prose is set with. */
const context = { fonts, contentWidthMm: 180 } as SheetContext;

it('[EN1400] a paragraph leaves no line of its own alone at the foot or the head of a page', () => {
  const words = 'Sing the groove through the fill and land on the one as if nothing had happened. ';
  const torn: unknown[] = [];
  for (const times of [2, 3, 4, 6]) {
    const lines = layOutProse(context, words.repeat(times));
    const height = (lines[0]?.heightMm ?? 0) + (lines[1]?.gapMm ?? 0);
    for (let room = 2; room <= lines.length; room += 1) {
      // A page with room for so many of the lines under what stands before.
      const blocks = [block(70), ...lines, block(70)];
      const starts = startsOf(blocks, 70 + (lines[0]?.gapMm ?? 0) + room * height) ?? [];
      torn.push(...starts.filter((at) => at === 2 || (at > 1 && at === lines.length)));
    }
  }
  expect(torn).toEqual([]);
});

it('[EN7704] the stages of a groove stand on its page where the page before is full enough without both', () => {
  const page = (belongs: boolean) => [block(62), block(25), block(15, { belongs }), row(1), row(1)];
  expect(startsOf(page(true))).toEqual([0, 1]);
  expect(startsOf(page(false))).toEqual([0, 2]);
});

it('[EN46] a page is six tenths full by its ink, not by the room under its last block', () => {
  const page = (heightMm: number) => [block(heightMm), block(20), block(75, { belongs: true })];
  expect(startsOf(page(60.5))).toEqual([0, 2]);
  expect(startsOf(page(61.5))).toEqual([0, 1]);
});

it('[EN1401] an exercise of several rows stays on one page where the page before is full enough without it', () => {
  // Four rows of one bar each, then an exercise of two rows: five rows fill the page, four are four fifths of it.
  expect(startsOf([row(1), row(1), row(1), row(1), row(1), row(2), row(1), row(1)])).toEqual([0, 4]);
  // An exercise longer than a page goes on in the next.
  expect(startsOf([1, 2, 3, 4, 5, 6, 7].map(row))?.length).toBe(2);
});

it('[EN2801] rows under one heading stay on one page where the page before is full enough without them', () => {
  const goesOn = (each: FlowBlock): FlowBlock => ({ ...each, goesOn: true });
  // Four rows, then a heading's two: five rows fill the page, four are four fifths of it.
  const rows = [row(1), row(1), row(1), row(1), row(1), goesOn(row(1)), row(1), row(1)];
  expect(startsOf(rows)).toEqual([0, 4]);
  // Where rows are under no heading, the page is filled.
  expect(startsOf(Array.from({ length: 8 }, () => row(1)))).toEqual([0, 5]);
});
