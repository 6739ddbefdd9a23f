import { expect, it } from 'vitest';
import { LABELS_ANEW, NUMBERED_ANEW } from '../../../../internal/testing/numbered-anew.ts';
import { expectInside, flat, layOut, tilesOf } from '../../test/sheets.ts';
import { boxOf } from './item.ts';
import { NUMBER_MM } from './over-notes.ts';

it('[EN7003] exercises stand under the numbers that their lesson gives them, and are read out so', () => {
  const many = NUMBERED_ANEW.replace('[x . . x]', `[${Array(12).fill('x x x .').join(', ')}]`);
  for (const [text, labels] of [
    [NUMBERED_ANEW, [...LABELS_ANEW]],
    [many, [...LABELS_ANEW, ...Array.from({ length: 11 }, (_, i) => `C${i + 2}`)]],
  ] as const) {
    const sheet = layOut(text, { paper: 'A5' });
    expectInside(sheet);
    const items = sheet.pages.flatMap((page) => flat(page.items));
    const numbers = items.filter((item) => item.kind === 'text' && item.sizeMm === NUMBER_MM);
    expect(numbers.map((item) => item.kind === 'text' && item.runs[0]?.text)).toEqual(labels);
    const titles = tilesOf(sheet).map(({ title }) => title);
    for (const label of labels)
      expect(titles).toContainEqual(expect.stringMatching(new RegExp(`^Exercise ${label}(:|$)`)));
    for (const page of sheet.pages) {
      const placed = flat(page.items);
      const tiles = placed.filter(({ kind }) => kind === 'tile').map(boxOf);
      for (const number of placed.filter((item) => item.kind === 'text' && item.sizeMm === NUMBER_MM)) {
        const box = boxOf(number);
        const touched = tiles.filter(
          (tile) =>
            tile.x < box.x + box.width &&
            box.x < tile.x + tile.width &&
            tile.y < box.y + box.height &&
            box.y < tile.y + tile.height,
        );
        expect(touched).toEqual([]);
      }
    }
  }
});
