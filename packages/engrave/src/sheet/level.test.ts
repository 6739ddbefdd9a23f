/** What stands in line with its neighbours: names, lines of one exercise, entries of the key. */
import { readFileSync } from 'node:fs';
import { groupBy } from '@shedbook/core';
import { expect, it } from 'vitest';
import { GERMAN_SHEET } from '../../../../internal/testing/in-english.ts';
import { lessonOf } from '../../test/setup.ts';
import { flat, layOut } from '../../test/sheets.ts';
import type { TextItem } from './item.ts';
import type { Sheet } from './sheet.ts';

const demo = (name: string) =>
  lessonOf(readFileSync(new URL(`../../../../demo/${name}.lesson.yaml`, import.meta.url), 'utf8'));

/** Where a text stands on the first page. */
function placeOf({ pages }: Sheet, text: string): TextItem | undefined {
  return flat(pages[0]?.items ?? []).find(
    (item) => item.kind === 'text' && item.runs.map((run) => run.text).join('') === text,
  ) as TextItem | undefined;
}

it('[EN7702] lines of an exercise with as many bars each are equally wide', () => {
  const { places } = layOut(demo('funk-fills'), { paper: 'tablet' });
  const lines = places.map(({ exercise, slots, widthMm }) => {
    return { key: `${exercise} ${new Set(slots.map(({ bar }) => bar)).size}`, widthMm: widthMm.toFixed(3) };
  });
  const alike = [...groupBy(lines, ({ key }) => key).values()].filter((each) => each.length > 1);
  expect(alike.length).toBeGreaterThan(4);
  for (const each of alike) expect(new Set(each.map(({ widthMm }) => widthMm)).size).toBe(1);
});

it('[EN7703] one long entry leaves the columns of the key as they are', () => {
  const sheet = layOut(demo('limb-by-limb'), { paper: 'tablet', words: GERMAN_SHEET });
  const [ride, snare, stick, drum] = ['Ride', 'Snare', 'Sidestick', 'Bassdrum'].map((text) =>
    placeOf(sheet, text),
  );
  const long = placeOf(sheet, 'wird vorgespielt: erst hören, dann spielen');
  expect([snare?.y, stick?.y, drum?.x]).toEqual([ride?.y, ride?.y, ride?.x]);
  // It is longer than a column, begins where one does, and is not cut.
  expect(long?.widthMm).toBeGreaterThan((snare?.x ?? 0) - (ride?.x ?? 0));
  expect(long?.x).toBe(ride?.x);
});

it('[EN7705] names beside each other are level, over an accent or not', () => {
  const named = (how = '') =>
    layOut(`title: T
exercises:
  - { pattern: "x x x x", name: Plain }
  - { pattern: "X x X x", name: Leaning${how} }
`);
  const yOf = (sheet: Sheet) => ['Plain', 'Leaning'].map((name) => placeOf(sheet, name)?.y ?? 0);
  const [plain, leaning] = yOf(named()) as [number, number];
  expect(plain).toBeCloseTo(leaning, 6);
  // A name with words under it stands where it has to, and its neighbour at its own notes.
  const [near, far] = yOf(
    named(', how: lead with the arm and let the stick fall back by itself each time'),
  ) as [number, number];
  expect(near - far).toBeGreaterThan(5);
});
