import { expect, it } from 'vitest';
import { expectInside, flat, layOut, textsOf, tilesOf } from '../../test/sheets.ts';
import type { Box } from '../svg/geometry.ts';
import { boxOf, type Item } from './item.ts';
import type { Sheet } from './sheet.ts';

const TEXT = `title: How
groove:
  ride: {pattern: x x.x x x.x, how: 'tip, bow'}
  hihat-foot: . x . x
  bass: {pattern: x x x x, level: feathered, how: heel down}
how: {snare: 'tip, as if it were hot'}
exercises:
  - {pattern: x . x ., how: 'edge, half stroke, from the fingers alone, with the little finger at rest', name: Named}
  - {pattern: x x x ., how: {ride: bell}}
  - x . . .
`;

const signsOf = (sheet: Sheet) =>
  sheet.pages.flatMap(({ items }) => flat(items).filter(({ kind }) => kind === 'picture'));

it('[EN2100] a sheet says how limbs play, with a sign for each word of the list, and explains the signs', () => {
  const sheet = layOut(TEXT);
  const texts = textsOf(sheet).join('\n');
  expect(texts).toContain('ride, f: tip, bow');
  expect(texts.replaceAll('\n', ' ')).toContain('bass drum, feathered: heel down');
  expect(texts.replaceAll('\n', ' ')).toContain('the exercise, mf: tip, as if it were hot');
  expect(texts).toContain('ride: bell');
  // What the key explains: every sign that stands on the sheet, no other
  const key = ['heel down', 'tip of the stick', 'near the edge', 'bow of the cymbal', 'bell of the cymbal'];
  expect([...key, 'half stroke'].filter((label) => textsOf(sheet).includes(label))).toHaveLength(6);
  expect(textsOf(sheet)).not.toContain('heel up');
  // definition: 4 in the stages, 2 and 1 over exercises, 6 in the key
  expect(signsOf(sheet)).toHaveLength(13);
  expect(signsOf(layOut(TEXT, { legend: false }))).toHaveLength(7);
});

function overlap(a: Box, b: Box): boolean {
  const slackMm = 0.01;
  const across = a.x < b.x + b.width - slackMm && b.x < a.x + a.width - slackMm;
  return across && a.y < b.y + b.height - slackMm && b.y < a.y + a.height - slackMm;
}

/** Where ink stands that no sign may touch: of a text its line, since its box has ascenders and descenders in it. */
function inkOf(item: Item): readonly Box[] {
  if (item.kind === 'text') {
    return [{ x: item.x, width: item.widthMm, y: item.y - 0.5 * item.sizeMm, height: 0.5 * item.sizeMm }];
  }
  return ['picture', 'tile', 'ring'].includes(item.kind) ? [boxOf(item)] : [];
}

it.each(['A4', 'A5', 'tablet'] as const)('[EN2100] signs touch nothing on %s', (paper) => {
  const sheet = layOut(TEXT, { paper });
  expectInside(sheet);
  const touched = sheet.pages.flatMap((page) => {
    const items = flat(page.items);
    const signs = items.filter(({ kind }) => kind === 'picture');
    return signs.flatMap((sign) =>
      items.filter((item) => item !== sign && inkOf(item).some((box) => overlap(boxOf(sign), box))),
    );
  });
  expect(touched).toEqual([]);
});

it('[EN2100] how an exercise is played is read out with it', () => {
  const [first] = tilesOf(layOut(TEXT)).filter(({ title }) => title.includes('Named'));
  expect(first?.description).toMatch(
    / Edge, half stroke, from the fingers alone, with the little finger at rest\.$/,
  );
});
