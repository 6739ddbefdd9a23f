/**
 * A page as SVG: texts as text, tiles as nested SVG with their own root ids, everything in millimetres.
 *
 * Conventions: where texts stay text, `font-family` names the fonts' own families and whoever shows the page has to
 * bring them; as outlines they look the same everywhere.
 */

import { escapeXml } from '@shedbook/core';
import type { Drawing } from '../svg/drawing.ts';
import { type Box, compose, scale, shift } from '../svg/geometry.ts';
import { outlineToPath } from '../svg/outline.ts';
import type { Fonts, TextRun } from '../text/fonts.ts';
import { tileRoot } from '../tile/tile.ts';
import { INK, type Item, type PictureItem, type TextItem } from './item.ts';
import type { PageContent } from './page.ts';

function mm(value: number): string {
  return String(Math.round(value * 1000) / 1000);
}

/** A run of text as outlines that say what they spell. */
function writeOutlines(run: TextRun, item: TextItem, x: number, fonts: Fonts): string {
  const { unitsPerEm, glyphs } = fonts.outline(run);
  const k = item.sizeMm / unitsPerEm;
  const paths = glyphs.map(
    (glyph) => `<path transform="translate(${glyph.x} ${glyph.y})" d="${glyph.path}"/>`,
  );
  const place = `translate(${mm(x)} ${mm(item.y)}) scale(${k.toPrecision(6)} ${(-k).toPrecision(6)})`;
  return `<g role="img" aria-label="${escapeXml(run.text)}" fill="${item.colour}" transform="${place}">${paths.join('')}</g>`;
}

function writeText(item: TextItem, outlines: Fonts | null): string {
  let x = item.x;
  return item.runs
    .map((run) => {
      const tag = outlines
        ? writeOutlines(run, item, x, outlines)
        : `<text class="${run.face}" x="${mm(x)}" y="${mm(item.y)}" font-size="${mm(item.sizeMm)}"${item.colour === INK ? '' : ` fill="${item.colour}"`}>${escapeXml(run.text)}</text>`;
      x += run.widthMm;
      return tag;
    })
    .join('');
}

/** The map from a picture's own units to its place. */
export function pictureMap(item: PictureItem) {
  const { viewBox } = item.drawing;
  const size = scale(item.width / viewBox.width, item.height / viewBox.height);
  return compose(shift(item.x, item.y), compose(size, shift(-viewBox.x, -viewBox.y)));
}

function writeDrawing(drawing: Drawing, ink: string): string {
  return drawing.shapes
    .map((shape) => {
      const fill = shape.fill === null ? 'none' : shape.fill === 'ink' ? ink : shape.fill;
      const stroke =
        shape.stroke === null
          ? ''
          : ` stroke="${shape.stroke === 'ink' ? ink : shape.stroke}" stroke-width="${shape.strokeWidth}"`;
      return `<path d="${outlineToPath(shape.outline, shape.map)}" fill="${fill}"${stroke}/>`;
    })
    .join('');
}

function writeItem(item: Item, outlines: Fonts | null, ink = INK): string {
  if (item.kind === 'text') return writeText(item, outlines);
  if (item.kind === 'line') {
    return `<path d="M${mm(item.x)} ${mm(item.y)}L${mm(item.x2)} ${mm(item.y2)}" stroke="${item.colour}" stroke-width="${mm(item.strokeMm)}"/>`;
  }
  if (item.kind === 'rect') {
    return `<rect x="${mm(item.x)}" y="${mm(item.y)}" width="${mm(item.width)}" height="${mm(item.height)}" fill="none" stroke="${item.colour}" stroke-width="${mm(item.strokeMm)}"/>`;
  }
  if (item.kind === 'ring') {
    return `<circle cx="${mm(item.x)}" cy="${mm(item.y)}" r="${mm(item.radius)}" fill="none" stroke="${item.colour}" stroke-width="${mm(item.strokeMm)}"/>`;
  }
  if (item.kind === 'image')
    return `<image x="${mm(item.x)}" y="${mm(item.y)}" width="${mm(item.width)}" height="${mm(item.height)}" preserveAspectRatio="none" role="img" aria-label="${escapeXml(item.alt)}" href="${item.dataUri}"/>`;
  if (item.kind === 'tile') return `${tileRoot(item.tile, item)}${item.tile.content}</svg>`;
  if (item.kind === 'picture')
    return `<g transform="matrix(${pictureMap(item).join(' ')})">${writeDrawing(item.drawing, ink)}</g>`;
  const inner = item.items.map((each) => writeItem(each, outlines, ink)).join('');
  return `<g id="${item.id}" role="group" aria-label="${escapeXml(item.label)}" transform="translate(${mm(item.x)} ${mm(item.y)})">${inner}</g>\n`;
}

/** Faces by the classes that texts have. */
const FACE_STYLES = `text{font-family:'Fira Sans',sans-serif;white-space:pre}.bold{font-weight:600}.italic{font-style:italic}`;

/**
 * The page as a whole SVG document.
 * @param outlines fonts to draw texts with as outlines; null leaves them text, for places that have the fonts
 */
export function writeSvg(page: PageContent, title: string, outlines: Fonts | null = null): string {
  const { widthMm, heightMm } = page;
  const root = `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="${widthMm}mm" height="${heightMm}mm" viewBox="0 0 ${widthMm} ${heightMm}">`;
  const paper = `<rect width="${widthMm}" height="${heightMm}" fill="#ffffff"/>`;
  const items = page.items.map((item) => writeItem(item, outlines)).join('\n');
  return `${root}<title>${escapeXml(title)}</title><style>${FACE_STYLES}</style>${paper}\n${items}\n</svg>\n`;
}

/** A part of a page to be shown on a screen. */
export interface Window {
  /** What of the page is seen, in millimetres. */
  readonly box: Box;
  /** Pixels of a millimetre. */
  readonly pixelsPerMm: number;
  /** CSS colour behind everything. */
  readonly paper: string;
  /** CSS colour of engraved pictures. */
  readonly ink: string;
}

/** Items as an SVG for a screen, as many pixels large as the window asks for; texts as outlines. */
export function writeWindow(items: readonly Item[], window: Window, fonts: Fonts): string {
  const { x, y, width, height } = window.box;
  const size = `width="${Math.round(width * window.pixelsPerMm)}" height="${Math.round(height * window.pixelsPerMm)}"`;
  const root = `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" ${size} viewBox="${x} ${y} ${width} ${height}">`;
  const paper = `<rect x="${x}" y="${y}" width="${width}" height="${height}" fill="${window.paper}"/>`;
  return `${root}${paper}${items.map((item) => writeItem(item, fonts, window.ink)).join('')}</svg>`;
}
