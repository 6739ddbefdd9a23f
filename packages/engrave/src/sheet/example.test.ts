import { expect, it } from 'vitest';
import { expectInside, flat, layOut, textsOf, tilesOf } from '../../test/sheets.ts';
import { EXAMPLE_SIGN_MM } from './example-sign.ts';
import { NUMBER_MM } from './over-notes.ts';

const TEXT = `title: Shown
exercises:
  - {pattern: x . x ., example: true}
  - x x x .
  - {pattern: x . . x, example: 2, name: Named}
`;

it('[EN2900] an example has a small sign under its number, explained in the key and read out', () => {
  for (const paper of ['A4', 'A5'] as const) {
    const sheet = layOut(TEXT, { paper });
    expectInside(sheet);
    const items = sheet.pages.flatMap((page) => flat(page.items));
    const signs = items.filter(({ kind }) => kind === 'picture');
    // definition: one for each of the two, one in the key
    expect(signs).toHaveLength(3);
    expect(textsOf(sheet)).toContain('shown first: listen, then play');
    const number = items.find(
      (item) => item.kind === 'text' && item.sizeMm === NUMBER_MM && item.runs[0]?.text === '1',
    );
    const sign = signs.find(({ y }) => number?.kind === 'text' && y > number.y);
    if (number?.kind !== 'text' || !sign) throw new Error('a number and its sign');
    // definition: right under the figures, in the room beside the notes
    expect(sign.y - number.y).toBeLessThan(EXAMPLE_SIGN_MM.height);
    expect(Math.abs(sign.x + EXAMPLE_SIGN_MM.width - number.x - number.widthMm)).toBeLessThan(1);
    const told = tilesOf(sheet).filter(({ description }) => description.includes('An example: it is shown'));
    expect(told).toHaveLength(2);
  }
  expect(textsOf(layOut('title: Plain\nexercises: [x . x .]\n'))).not.toContain(
    'shown first: listen, then play',
  );
});
