/** What tests of sheets share: a sheet of a text, and what is on its pages. */
import type { Lesson, XmlElement } from '@shedbook/core';
import { expect } from 'vitest';
import { ENGLISH_SHEET } from '../../../internal/testing/in-english.ts';
import { boxOf, type GroupItem, type Item, moved } from '../src/sheet/item.ts';
import { layOutSheet, type Sheet, type SheetOptions } from '../src/sheet/sheet.ts';
import { type Box, contains } from '../src/svg/geometry.ts';
import { engraver, fonts, lessonOf } from './setup.ts';
import { rootOf } from './xml.ts';

/** The sheet of a lesson or of its text. */
export function layOut(lesson: Lesson | string, options: Partial<SheetOptions> = {}): Sheet {
  return layOutSheet(typeof lesson === 'string' ? lessonOf(lesson) : lesson, {
    ...{ engraver, fonts, words: ENGLISH_SHEET },
    ...options,
  });
}

/** Every item with its place on the page, groups opened. */
export function flat(items: readonly Item[], x = 0, y = 0): readonly Item[] {
  return items.flatMap((item) =>
    item.kind === 'group' ? flat(item.items, x + item.x, y + item.y) : [moved(item, x, y)],
  );
}

/** Every line of text on a page, from 0. */
export function textsOf(sheet: Sheet, page = 0): readonly string[] {
  return flat(sheet.pages[page]?.items ?? []).flatMap((item) =>
    item.kind === 'text' ? [item.runs.map((run) => run.text).join('')] : [],
  );
}

/** Every tile on every page. */
export const tilesOf = (sheet: Sheet) =>
  sheet.pages.flatMap((page) =>
    flat(page.items).flatMap((item) => (item.kind === 'tile' ? [item.tile] : [])),
  );

/** SMuFL code points of all glyphs. */
export const glyphsOf = (sheet: Sheet) =>
  new Set(tilesOf(sheet).flatMap((tile) => tile.drawing.shapes.map((shape) => shape.glyph)));

/** Exercises by page. */
export function groupsOf(sheet: Sheet): readonly (readonly GroupItem[])[] {
  return sheet.pages.map((page) => page.items.filter((item) => item.kind === 'group'));
}

/** How far rounding may carry a box, in millimetres. */
const SLACK_MM = 0.02;

/** Expects everything inside the margins. */
export function expectInside(sheet: Sheet): void {
  for (const page of sheet.pages) {
    for (const item of flat(page.items)) {
      const box = boxOf(item);
      if (!contains(page.margins, box, SLACK_MM))
        throw new Error(`outside: ${item.kind} ${JSON.stringify(box)}`);
    }
  }
}

function overlap(a: Box, b: Box): boolean {
  return (
    Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x) > SLACK_MM &&
    Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y) > SLACK_MM
  );
}

/** Boxes of what two exercises have that lie on one another: a heading may stand over the exercise beside it. */
function overlapping(a: GroupItem, b: GroupItem): readonly (readonly [Box, Box])[] {
  if (!overlap(boxOf(a), boxOf(b))) return [];
  const others = flat([b]).map(boxOf);
  return flat([a])
    .map(boxOf)
    .flatMap((box) => others.filter((other) => overlap(box, other)).map((other) => [box, other] as const));
}

/** Expects no exercise to reach into another. */
export function expectApart(sheet: Sheet): void {
  for (const groups of groupsOf(sheet)) {
    for (const [index, group] of groups.entries()) {
      for (const other of groups.slice(index + 1)) expect(overlapping(group, other)).toEqual([]);
    }
  }
}

/** Ids of everything on a page, in order. */
export function idsOf(svg: string): readonly string[] {
  const ids: string[] = [];
  const collect = (element: XmlElement) => {
    if (element.attributes.id) ids.push(element.attributes.id);
    element.children.forEach(collect);
  };
  collect(rootOf(svg));
  return ids;
}

/** How full the pages are: the lowest ink over the foot as a share of what is between the margins. */
export function fullness(sheet: Sheet): readonly number[] {
  return sheet.pages.map(({ items, margins }) => {
    const foot = margins.y + margins.height - 8;
    const lowest = Math.max(
      ...items
        .map(boxOf)
        .map((box) => box.y + box.height)
        .filter((y) => y <= foot + 1),
    );
    return (lowest - margins.y) / (foot - margins.y);
  });
}
