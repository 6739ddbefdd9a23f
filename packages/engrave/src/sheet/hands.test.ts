import { expect, it } from 'vitest';
import { expectInside, flat, layOut, textsOf } from '../../test/sheets.ts';

const TEXT = `title: Hands
groove: {hihat-foot: . x . x}
exercises:
  - {pattern: {snare: x. .x x. .., tom-high: .x x. .. xx}, sticking: {snare: R L R, tom-high: L R L R}}
  - {pattern: {snare: x . . ., tom-low: x . x .}, sticking: {snare: L, tom-low: R L}}
  - {pattern: {snare: x . x ., tom-low: . x . x}, sticking: {tom-low: R L}}
`;

it('[EN2102] hands of every voice stand under their strokes, those that strike together as one letter', () => {
  const sheet = layOut(TEXT, { tickBoxes: false, legend: false });
  expectInside(sheet);
  const letters = flat(sheet.pages[0]?.items ?? []).flatMap((item) =>
    item.kind === 'text' && /^[RLB]$/.test(item.runs.map(({ text }) => text).join('')) ? [item] : [],
  );
  const rows = [...new Set(letters.map(({ y }) => y))].map((y) => {
    const row = letters.filter((each) => each.y === y).toSorted((a, b) => a.x - b.x);
    return row.map(({ runs }) => runs.map(({ text }) => text).join('')).join('');
  });
  // definition: the strokes of all voices from left to right; R and L at one moment are both
  expect(rows.join(' ').replaceAll(' ', '')).toBe('RLRLRLRBLRL');
  expect(textsOf(layOut(TEXT))).toContain('right, left hand');
  expect(textsOf(layOut(TEXT, { stickings: false }))).not.toContain('R');
});
