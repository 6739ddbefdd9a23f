import { expect, it } from 'vitest';
import { glyphsOf, layOut, textsOf, tilesOf } from '../../test/sheets.ts';

const TEXT = `title: A slow one
groove: {hihat-foot: . x . x}
sections:
  - {heading: With brushes, playedWith: brushes, exercises: [w . x w]}
  - {heading: With sticks, exercises: [x . x .]}
  - {heading: Again, playedWith: brushes, exercises: [W . x .]}
`;

it('[EN1402] brushes are said where they are taken up, and a sweep is drawn, named and read out', () => {
  const sheet = layOut(TEXT);
  const texts = sheet.pages.flatMap((_, page) => textsOf(sheet, page));
  expect(texts.filter((text) => text === 'brushes' || text === 'sticks')).toEqual([
    'brushes',
    'sticks',
    'brushes',
  ]);
  expect(texts).toContain('sweep of the brush');
  // standard: SMuFL, noteheadSlashHorizontalEnds
  expect(glyphsOf(sheet).has('E101')).toBe(true);
  expect(tilesOf(sheet).some(({ description }) => description.includes('sweep'))).toBe(true);
  expect(glyphsOf(layOut(TEXT.replaceAll(/[wW] \. x/g, 'x . x').replace('x w]', 'x x]'))).has('E101')).toBe(
    false,
  );
});
