/// <reference path="../vendor.d.ts" />
/**
 * Pages as PDF: text in embedded subsets of its fonts, the teacher's own pictures as they are, everything else as vector
 * paths.
 *
 * Conventions: a PDF point is 1/72 inch. The same pages and the same date always give the same bytes.
 */
import { joinBytes } from '@shedbook/core';
import PDFDocument, { type OutlineItem } from 'pdfkit';
import {
  type GroupItem,
  type ImageItem,
  INK,
  type Item,
  type LineItem,
  type RectItem,
  type RingItem,
  type TextItem,
} from '../sheet/item.ts';
import type { PageContent } from '../sheet/page.ts';
import { pictureMap } from '../sheet/write-svg.ts';
import type { Drawing } from '../svg/drawing.ts';
import { compose, QUARTER_HANDLE, scale, shift } from '../svg/geometry.ts';
import type { Fonts } from '../text/fonts.ts';
import { colourOperators, mapOperator, shapeOperators } from './content.ts';
import { Structure } from './structure.ts';

/** Points in a millimetre. @source 1 in = 25.4 mm = 72 pt */
export const POINTS_PER_MM = 72 / 25.4;

/** A bookmark: a page and what lies in it. */
export interface OutlineEntry {
  readonly title: string;
  /** Index of its page. */
  readonly page: number;
  readonly inside: readonly OutlineEntry[];
}

/** What a PDF says about itself. */
export interface PdfInfo {
  readonly title?: string;
  readonly author?: string | null;
  /** The language that it is read in, as BCP 47 names it; English where left out. */
  readonly language?: string;
  /** Bookmarks, in order of their pages; none where left out. */
  readonly outline?: readonly OutlineEntry[];
  /** When it was made, in milliseconds since 1970; the start of 1970 where nobody says. */
  readonly createdMs?: number;
}

function ringSteps({ x, y, radius: r }: RingItem): string {
  const k = QUARTER_HANDLE * r;
  const n = (value: number) => value.toFixed(4);
  const curve = (...c: number[]) => `${c.map(n).join(' ')} c`;
  return [
    `${n(x + r)} ${n(y)} m`,
    curve(x + r, y + k, x + k, y + r, x, y + r),
    curve(x - k, y + r, x - r, y + k, x - r, y),
    curve(x - r, y - k, x - k, y - r, x, y - r),
    curve(x + k, y - r, x + r, y - k, x + r, y),
    'h',
  ].join(' ');
}

function lineSteps(item: LineItem | RectItem): string {
  const n = (value: number) => value.toFixed(4);
  if (item.kind === 'line') return `${n(item.x)} ${n(item.y)} m ${n(item.x2)} ${n(item.y2)} l`;
  return `${n(item.x)} ${n(item.y)} ${n(item.width)} ${n(item.height)} re`;
}

/** A stroke in millimetres under a shift. */
function stroke(item: LineItem | RectItem | RingItem, x: number, y: number): string {
  const steps = item.kind === 'ring' ? ringSteps(item) : lineSteps(item);
  const map = mapOperator(compose(scale(POINTS_PER_MM), shift(x, y)));
  return `q ${map} ${colourOperators(item.colour, 'RG')} ${item.strokeMm.toFixed(3)} w ${steps} S Q`;
}

function drawText(document: PDFDocument, item: TextItem, x: number, y: number): void {
  let left = item.x + x;
  for (const run of item.runs) {
    document
      .font(run.face)
      .fontSize(item.sizeMm * POINTS_PER_MM)
      .fillColor(item.colour)
      .text(run.text, left * POINTS_PER_MM, (item.y + y) * POINTS_PER_MM, {
        lineBreak: false,
        baseline: 'alphabetic',
      });
    left += run.widthMm;
  }
}

/** A picture in pixels; one that is printed again is in the file once. */
function drawImage(document: PDFDocument, item: ImageItem, x: number, y: number): void {
  const [width, height] = [item.width * POINTS_PER_MM, item.height * POINTS_PER_MM];
  document.image(item.dataUri, (item.x + x) * POINTS_PER_MM, (item.y + y) * POINTS_PER_MM, { width, height });
}

function drawing(of: Drawing, map: ReturnType<typeof scale>): string {
  return of.shapes.map((shape) => shapeOperators(shape, map, INK)).join('\n');
}

function drawItem(document: PDFDocument, item: Exclude<Item, GroupItem>, x: number, y: number): void {
  if (item.kind === 'text') drawText(document, item, x, y);
  else if (item.kind === 'image') drawImage(document, item, x, y);
  else if (item.kind === 'tile') {
    const { drawing: engraved, mmPerUnit } = item.tile;
    const place = compose(
      shift(x + item.x, y + item.y),
      compose(scale(mmPerUnit), shift(-engraved.viewBox.x, -engraved.viewBox.y)),
    );
    document.addContent(drawing(engraved, compose(scale(POINTS_PER_MM), place)));
  } else if (item.kind === 'picture') {
    document.addContent(
      drawing(item.drawing, compose(scale(POINTS_PER_MM), compose(shift(x, y), pictureMap(item)))),
    );
  } else document.addContent(stroke(item, x, y));
}

function open(info: PdfInfo): PDFDocument {
  return new PDFDocument({
    autoFirstPage: false,
    // Else it reads one of its own before ours.
    font: null,
    lang: info.language ?? 'en',
    tagged: true,
    subset: 'PDF/UA',
    pdfVersion: '1.7',
    displayTitle: true,
    info: {
      Title: info.title ?? '',
      ...(info.author ? { Author: info.author } : {}),
      CreationDate: new Date(info.createdMs ?? 0),
    },
  });
}

/** Sets the bookmarks of a page while it is the last one; what lies in an entry goes under it. */
function createBookmarks(document: PDFDocument, entries: readonly OutlineEntry[]) {
  const items = new Map<OutlineEntry, OutlineItem>();
  const all = entries.flatMap((entry) => [
    { entry, within: null },
    ...entry.inside.map((each) => ({ entry: each, within: entry })),
  ]);
  return (page: number) => {
    for (const { entry, within } of all) {
      if (entry.page !== page) continue;
      const parent = (within && items.get(within)) ?? document.outline;
      items.set(entry, parent.addItem(entry.title));
    }
  };
}

/**
 * Writes pages as PDF 1.7, tagged after PDF/UA.
 * @returns the bytes of the file.
 */
export function writePdf(
  pages: readonly PageContent[],
  fonts: Fonts,
  info: PdfInfo = {},
): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const document = open(info);
    const chunks: Uint8Array[] = [];
    document.on('data', (chunk) => chunks.push(chunk));
    document.on('end', () => resolve(joinBytes(chunks)));
    document.on('error', reject);
    for (const face of fonts.faces) document.registerFont(face.name, face.forDocuments);
    const bookmark = createBookmarks(document, info.outline ?? []);
    const structure = new Structure(document, (item, x, y) => drawItem(document, item, x, y));
    pages.forEach((page, index) => {
      document.addPage({ size: [page.widthMm * POINTS_PER_MM, page.heightMm * POINTS_PER_MM], margin: 0 });
      bookmark(index);
      structure.add(page.items);
    });
    structure.end();
    document.end();
  });
}
