import fc from 'fast-check';
import { expect, it } from 'vitest';
import { arbitraryLesson } from '../../../../internal/testing/arbitrary-lesson.ts';
import { expectApart, expectInside, flat, layOut, textsOf } from '../../test/sheets.ts';
import type { Item } from './item.ts';

const TEXT = `title: T
groove: {hihat: x x x x, hihat-foot: . x . x, bass: x . x .}
sheet: {legend: false, tickBoxes: false}
exercises:
  - pattern: x x x x | . . x x
    dynamics: p | < . . f
    above: softly | build
    below: "| brighter"
    fill: 3
    rests: other foot
`;

const itemsOf = (text: string) => flat(layOut(text).pages[0]?.items ?? []);

function textAt(items: readonly Item[], text: string) {
  const found = items.flatMap((item) =>
    item.kind === 'text' && item.runs.map((run) => run.text).join('') === text ? [item] : [],
  );
  expect(found).toHaveLength(1);
  return found[0] as (typeof found)[0];
}

it('[EN60] texts stand over and under their bars, dynamics and hairpins under the notes, each at its beat', () => {
  const items = itemsOf(TEXT);
  const tile = items.find(
    (item) => item.kind === 'tile' && item.tile.heads.some(({ id }) => id.startsWith('e1-')),
  );
  if (tile?.kind !== 'tile') throw new Error('no tile');
  const head = (bar: number, start: string) => {
    const found = tile.tile.heads.find(({ id }) => id.startsWith(`e1-b${bar}-${start}`));
    if (!found) throw new Error(`no head ${bar} ${start}`);
    return tile.x + found.xMm;
  };
  const middle = (text: string) => textAt(items, text).x + textAt(items, text).widthMm / 2;
  expect(middle('p')).toBeCloseTo(head(1, '0-1'), 1);
  expect(middle('f')).toBeCloseTo(head(2, '3-4'), 1);
  const above = ['softly', 'build', 'Fill'].map((text) => textAt(items, text));
  for (const text of above) expect(text.y).toBeLessThan(tile.y + tile.tile.staffTopMm);
  const below = ['p', 'f', 'brighter'].map((text) => textAt(items, text));
  for (const text of below) expect(text.y).toBeGreaterThan(tile.y + tile.tile.staffBottomMm);
  expect(above[1]?.x).toBeGreaterThan(head(1, '3-4'));
  expect(Math.abs((above[2]?.x ?? 0) - head(2, '1-2'))).toBeLessThan(1);
  const hairpins = items.filter((item) => item.kind === 'line' && item.y !== item.y2);
  expect(hairpins).toHaveLength(2);
  for (const line of hairpins) {
    if (line.kind !== 'line') continue;
    // definition: it opens from one point, on 1 of the second bar, towards the f
    expect(Math.abs(line.x - tile.x - tile.tile.xAt(2, { num: 0, den: 1 }))).toBeLessThan(0.1);
    expect(line.x2).toBeLessThan(textAt(items, 'f').x);
    expect(line.x2).toBeGreaterThan(head(2, '1-2'));
  }
  expect(hairpins.map((line) => (line.kind === 'line' ? line.y : 0))).toEqual([
    expect.closeTo((hairpins[1] as { y: number }).y, 6),
    expect.any(Number),
  ]);
});

it('[EN60] what rests is said where the groove is not printed, and is silent where it is', () => {
  expect(textsOf(layOut(TEXT))).toContain('without hi-hat foot');
  const whole = layOut(TEXT.replace('legend: false', 'legend: false, staff: full'));
  expect(textsOf(whole)).not.toContain('without hi-hat foot');
  const heads = flat(whole.pages[0]?.items ?? []).flatMap((item) =>
    item.kind === 'tile' ? item.tile.heads : [],
  );
  const own = heads.filter(({ id }) => id.startsWith('e1-'));
  expect(own.filter(({ id }) => id.endsWith('-hihat-foot'))).toEqual([]);
  expect(own.filter(({ id }) => id.endsWith('-hihat'))).toHaveLength(6);
});

it('[EN5201] a fill on 1 stands under what is said of the whole exercise, and no word is broken', () => {
  const items = itemsOf(
    TEXT.replace('fill: 3', 'fill: {bar: 1, beat: 1}').replace(
      'rests: other foot',
      'rests: lead hand + other foot + lead foot',
    ),
  );
  const resting = textAt(items, 'without hi-hat, hi-hat foot, bass drum');
  const fill = textAt(items, 'Fill');
  expect(Math.abs(resting.x - fill.x)).toBeLessThan(1);
  expect(fill.y - resting.y).toBeGreaterThan(fill.sizeMm);
});

it('[EN60] whatever is said stays on the page, and exercises stay apart', () => {
  fc.assert(
    fc.property(arbitraryLesson, (lesson) => {
      const sheet = layOut(lesson);
      expectInside(sheet);
      expectApart(sheet);
    }),
    { numRuns: 8, seed: 46 },
  );
});
