/**
 * What a page is made of: texts, lines, boxes, rings, tiles, pictures, images and groups of them.
 *
 * Conventions: millimetres from the upper left corner of whatever holds the item; a text stands on its baseline
 * at its left end.
 */
import type { Drawing } from '../svg/drawing.ts';
import { type Box, grow, unite } from '../svg/geometry.ts';
import { ASCENT, DESCENT, type TextRun, type Weight } from '../text/fonts.ts';
import type { Tile } from '../tile/tile.ts';

/**
 * A heading of a level, or what need not be read out: page numbers, and what a picture's own words say already.
 * @source ISO 32000-1, 14.8.4.3 (headings) and 14.8.2.2 (artifacts)
 */
export type TextRole = 'H1' | 'H2' | 'H3' | 'aside';

/** A line of text, split where its font changes; in millimetres. */
export interface TextItem {
  readonly kind: 'text';
  readonly x: number;
  readonly y: number;
  readonly weight: Weight;
  readonly sizeMm: number;
  readonly colour: string;
  readonly runs: readonly TextRun[];
  readonly widthMm: number;
  /** What it is to those who listen to a page; a paragraph where left out. */
  readonly role?: TextRole;
}

/** A straight line, in millimetres. */
export interface LineItem {
  readonly kind: 'line';
  readonly x: number;
  readonly y: number;
  readonly x2: number;
  readonly y2: number;
  readonly strokeMm: number;
  readonly colour: string;
}

/** An empty box with a border, in millimetres. */
export interface RectItem {
  readonly kind: 'rect';
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly strokeMm: number;
  readonly colour: string;
}

/** A ring round (x, y), in millimetres. */
export interface RingItem {
  readonly kind: 'ring';
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly strokeMm: number;
  readonly colour: string;
}

/** An engraved tile, placed in millimetres. */
export interface TileItem {
  readonly kind: 'tile';
  readonly x: number;
  readonly y: number;
  readonly tile: Tile;
}

/** A vector picture, scaled to a width and height in millimetres. */
export interface PictureItem {
  readonly kind: 'picture';
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly drawing: Drawing;
}

/** A photograph or a drawing in pixels, in millimetres. */
export interface ImageItem {
  readonly kind: 'image';
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** A PNG or JPEG file as an address of data. */
  readonly dataUri: string;
  /** What it shows, for those who do not see it. */
  readonly alt: string;
}

/** Items that belong together, placed in millimetres and named for people who listen to the page. */
export interface GroupItem {
  readonly kind: 'group';
  readonly x: number;
  readonly y: number;
  readonly id: string;
  readonly label: string;
  readonly items: readonly Item[];
}

/** Anything on a page. */
export type Item = TextItem | LineItem | RectItem | RingItem | TileItem | PictureItem | ImageItem | GroupItem;

/** Items in a box of their own, to be placed as one. */
export interface Block {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly items: readonly Item[];
}

/** What is written with. */
export const INK = '#000000';

/** For exercise numbers, stages and the rule under the title: the one colour besides ink. */
export const ACCENT = '#8a2b16';

/** For what is there but does not sound: counts of silent slots, tempi in their boxes. */
export const PENCIL = '#5f5f5f';

/** The item moved by (x, y). */
export function moved<T extends Item>(item: T, x: number, y: number): T {
  if (item.kind === 'line')
    return { ...item, x: item.x + x, y: item.y + y, x2: item.x2 + x, y2: item.y2 + y };
  return { ...item, x: item.x + x, y: item.y + y };
}

/** All items moved by (x, y). */
export function allMoved(items: readonly Item[], x: number, y: number): readonly Item[] {
  return items.map((item) => moved(item, x, y));
}

/** Texts, lines and pictures larger or smaller by a factor, in another colour; pictures keep theirs. @throws RangeError for any other item */
export function inSize(items: readonly Item[], by: number, colour: string): readonly Item[] {
  return items.map((item): Item => {
    const [x, y] = [by * item.x, by * item.y];
    if (item.kind === 'line')
      return { ...item, x, y, x2: by * item.x2, y2: by * item.y2, strokeMm: by * item.strokeMm, colour };
    if (item.kind === 'picture') return { ...item, x, y, width: by * item.width, height: by * item.height };
    if (item.kind !== 'text')
      throw new RangeError('Internal error: only texts, lines and pictures change their size');
    const runs = item.runs.map((run) => ({ ...run, widthMm: by * run.widthMm }));
    return { ...item, x, y, sizeMm: by * item.sizeMm, widthMm: by * item.widthMm, runs, colour };
  });
}

/** The box that an item's ink stays inside. */
export function boxOf(item: Item): Box {
  if (item.kind === 'text') {
    const { x, y, sizeMm, widthMm } = item;
    return { x, y: y - ASCENT * sizeMm, width: widthMm, height: (ASCENT + DESCENT) * sizeMm };
  }
  if (item.kind === 'line') {
    const ends = { x: Math.min(item.x, item.x2), y: Math.min(item.y, item.y2) };
    const box = { ...ends, width: Math.abs(item.x2 - item.x), height: Math.abs(item.y2 - item.y) };
    const half = item.strokeMm / 2;
    return box.height === 0 ? { ...box, y: box.y - half, height: item.strokeMm } : grow(box, half);
  }
  if (item.kind === 'rect' || item.kind === 'picture' || item.kind === 'image') {
    const box = { x: item.x, y: item.y, width: item.width, height: item.height };
    return item.kind === 'rect' ? grow(box, item.strokeMm / 2) : box;
  }
  if (item.kind === 'ring') {
    return grow({ x: item.x, y: item.y, width: 0, height: 0 }, item.radius + item.strokeMm / 2);
  }
  if (item.kind === 'tile')
    return { x: item.x, y: item.y, width: item.tile.widthMm, height: item.tile.heightMm };
  const inner = unite(item.items.map(boxOf)) ?? { x: 0, y: 0, width: 0, height: 0 };
  return { ...inner, x: inner.x + item.x, y: inner.y + item.y };
}
