/**
 * Tiles: one line of engraved bars, cut out of its page, with the place of every head.
 *
 * Conventions: millimetres from the tile's upper left corner; bars from 1; starts in whole notes from the bar
 * line. The time map's quarter notes count from the first bar.
 */
import { escapeXml, type Fraction, fraction, type NotatedBar, toNumber, type Voice } from '@shedbook/core';
import type { Drawing, NamedGroup } from '../svg/drawing.ts';
import { type Box, unite } from '../svg/geometry.ts';
import { readSvg } from '../svg/read-svg.ts';
import { movedApart } from './apart.ts';
import { type MeiBarSigns, type MeiOptions, type Staff, writeMei } from './mei.ts';
import { type Anchor, momentsOf } from './moments.ts';
import { leadIn, leastWidth, lengthOf, type SlotText } from './spacing.ts';
import type { EngravingToolkit } from './toolkit.ts';
import { touchUp } from './touch-up.ts';

/** What is to be engraved, and how large. */
export interface TileRequest {
  /** Start of every id; unique on its page; letters, digits, `-` and `_`, a letter first. */
  readonly id: string;
  readonly bars: readonly NotatedBar[];
  readonly staff: Staff;
  /** Distance between two staff lines. */
  readonly staffSpaceMm: number;
  /** Width to fill, or null for the least that the notes need. */
  readonly widthMm: number | null;
  readonly signature?: boolean;
  readonly barLines?: MeiOptions['barLines'];
  /** Repeat signs, endings and signs in place of notes, bar by bar; none where left out. */
  readonly signs?: readonly MeiBarSigns[];
  /** Number of the first bar, 1 where left out. */
  readonly firstBar?: number;
  /** Whether notes have stems: yes where left out. */
  readonly stems?: boolean;
  /** Space before the first note in staff spaces: verovio's own where left out. */
  readonly leadSpaces?: number;
  /** Whether a time map is wanted: no where left out, since it takes as long as the engraving. */
  readonly timemap?: boolean;
  /** Texts under the notes that must stand apart, for each bar. */
  readonly texts?: readonly (readonly SlotText[])[];
  /** What a screen reader says: a short name and the pattern in words. */
  readonly title?: string;
  readonly description?: string;
}

/** A notehead that can be found again. */
export interface TileHead {
  readonly id: string;
  readonly bar: number;
  readonly start: Fraction;
  readonly voice: Voice;
  /** Middle of the head. */
  readonly xMm: number;
  readonly yMm: number;
}

/** A moment of the tile's music: what starts and what stops, by the ids of heads. */
export interface TimemapEntry {
  readonly quarters: number;
  readonly on: readonly string[];
  readonly off: readonly string[];
}

/** One engraved line. */
export interface Tile {
  /** A whole SVG document. */
  readonly svg: string;
  readonly widthMm: number;
  readonly heightMm: number;
  /** Top and bottom staff line (the same for a one-line staff). */
  readonly staffTopMm: number;
  readonly staffBottomMm: number;
  readonly heads: readonly TileHead[];
  /** The line before the first bar and those after each; empty where none is drawn. */
  readonly barLinesMm: readonly number[];
  /** Where a moment stands: the middle of a head that would be struck there. `bar` from 1, `start` in whole notes. */
  readonly xAt: (bar: number, start: Fraction) => number;
  /** Empty where none was asked for. */
  readonly timemap: readonly TimemapEntry[];
  readonly drawing: Drawing;
  /** Millimetres of one unit of the drawing. */
  readonly mmPerUnit: number;
  /** Everything inside the root element of `svg`, and the id its styles are scoped to. */
  readonly content: string;
  readonly rootId: string;
  readonly title: string;
  readonly description: string;
}

/** Verovio's staff space in units of its SVG at scale 100 (its `unit` is half a staff space of 9). */
const STAFF_SPACE_UNITS = 18;

/** Units a quarter note takes for each unit of `spacingLinear`, measured in verovio 6.3 with `spacingNonLinear` 1. */
const UNITS_PER_QUARTER = 2552.5;

/** Half the width of a notehead, in staff spaces. */
const HALF_HEAD_SPACES = 0.65;

/** Staff spaces that clef and meter take before the first note, and a repeat sign after the last. */
const SIGNATURE_SPACES = 11;
const REPEAT_SPACES = 2.4;

const COMMON_OPTIONS = {
  adjustPageHeight: true,
  adjustPageWidth: false,
  beamMaxSlope: 0,
  breaks: 'encoded',
  font: 'Leland',
  footer: 'none',
  header: 'none',
  // Half spaces, as verovio counts: the parenthesis of a ghost note is moved on by half of one afterwards.
  leftMarginRightBarLine: 1.6,
  measureMinWidth: 1,
  minLastJustification: 0,
  outputIndent: 0,
  pageMarginBottom: 0,
  pageMarginLeft: 0,
  pageMarginRight: 0,
  pageMarginTop: 0,
  scale: 100,
  spacingNonLinear: 1,
  svgFormatRaw: true,
  svgViewBox: true,
  tupletAngledOnBeams: true,
};

/** A whole number that depends on every character, for ids that differ from tile to tile. */
function seedOf(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i += 1) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return (hash >>> 1) + 1;
}

/** Staff spaces that clef, meter and repeat signs take. */
function signSpaces({ signature, barLines, signs = [] }: TileRequest): number {
  const repeats = signs.reduce((sum, { opens, closes }) => sum + Number(opens) + Number(closes), 0);
  return (signature ? SIGNATURE_SPACES : 0) + (repeats + Number(barLines === 'repeat')) * REPEAT_SPACES;
}

function fixedSpaces(request: TileRequest): number {
  return request.bars.reduce((sum, bar) => sum + leadIn(bar), 0) + signSpaces(request);
}

/** Least width of a tile that keeps its notes apart. */
export function leastTileWidthMm(request: TileRequest): number {
  return (leastWidth(request.bars, request.texts) + signSpaces(request)) * request.staffSpaceMm;
}

function engrave(toolkit: EngravingToolkit, request: TileRequest): { drawn: string; timemap: unknown } {
  const widthMm = request.widthMm ?? leastTileWidthMm(request);
  const width = Math.max(100, Math.round((widthMm / request.staffSpaceMm) * STAFF_SPACE_UNITS));
  const quarters = 4 * toNumber(lengthOf(request.bars));
  const free = Math.max(width * 0.2, width - fixedSpaces(request) * STAFF_SPACE_UNITS);
  toolkit.setOptions({
    ...COMMON_OPTIONS,
    pageWidth: width,
    spacingLinear: Math.min(1, Math.max(0.002, free / quarters / UNITS_PER_QUARTER)),
    leftMarginNote: 2 * (request.leadSpaces ?? 0.5),
    noJustification: request.widthMm === null,
    xmlIdSeed: seedOf(request.id),
  });
  const { id, staff, signature = false, barLines = 'single', firstBar = 1, stems = true } = request;
  const signs = request.signs ? { signs: request.signs } : {};
  const options = { prefix: id, staff, signature, barLines, firstBar, stems, ...signs };
  toolkit.loadData(writeMei(request.bars, options));
  const timemap = request.timemap ? toolkit.renderToTimemap({ includeRests: false }) : [];
  return { drawn: touchUp(toolkit.renderToSVG(1)), timemap };
}

interface RawTimemapEntry {
  readonly qstamp: number;
  readonly on?: readonly string[];
  readonly off?: readonly string[];
}

function readTimemap(timemap: unknown): readonly TimemapEntry[] {
  const entries = (typeof timemap === 'string' ? JSON.parse(timemap) : timemap) as readonly RawTimemapEntry[];
  return entries.map(({ qstamp, on = [], off = [] }) => ({ quarters: qstamp, on, off }));
}

/** Box of the staff lines: shapes directly inside the staff, upright ones (bar lines) left out. */
function staffBox(drawing: Drawing): Box | null {
  const levels = drawing.shapes.filter(
    (shape) => shape.stroke !== null && shape.box.width > 20 * shape.box.height,
  );
  const widest = Math.max(...levels.map((shape) => shape.box.width));
  return unite(levels.filter((shape) => shape.box.width > 0.9 * widest).map((shape) => shape.box));
}

const HEAD_ID = /-b(\d+)-(\d+)-(\d+)-([a-z-]+)$/;

function headOfGroup(group: NamedGroup, ink: Box, mmPerUnit: number): TileHead | null {
  if (!group.classes.includes('notehead') || group.within === null) return null;
  const match = HEAD_ID.exec(group.within);
  if (!match) return null;
  return {
    id: group.within,
    bar: Number(match[1]),
    start: fraction(Number(match[2]), Number(match[3])),
    voice: match[4] as Voice,
    xMm: (group.box.x + group.box.width / 2 - ink.x) * mmPerUnit,
    yMm: (group.box.y + group.box.height / 2 - ink.y) * mmPerUnit,
  };
}

/** Heads and rests as anchors of time; a rest stands where the left edge of a head would. */
function anchorsOf(
  drawing: Drawing,
  heads: readonly TileHead[],
  mmPerUnit: number,
  ink: Box,
): readonly Anchor[] {
  const rests = drawing.groups.flatMap((group) => {
    const match = /-b(\d+)-(\d+)-(\d+)-\d+-rest$/.exec(group.id ?? '');
    if (!match) return [];
    const x = (group.box.x - ink.x) * mmPerUnit + HALF_HEAD_SPACES * STAFF_SPACE_UNITS * mmPerUnit;
    return [{ bar: Number(match[1]), at: Number(match[2]) / Number(match[3]), x }];
  });
  return [...rests, ...heads.map((head) => ({ bar: head.bar, at: toNumber(head.start), x: head.xMm }))];
}

/** Right edges of the bars. */
function barLinesOf(drawing: Drawing, ink: Box, mmPerUnit: number): readonly number[] {
  return drawing.groups
    .filter((group) => group.classes.includes('barLine'))
    .map((group) => (group.box.x - ink.x) * mmPerUnit)
    .sort((a, b) => a - b);
}

function accessibleText(id: string, title: string, description: string): string {
  const parts = [
    title === '' ? '' : `<title id="${id}-title">${escapeXml(title)}</title>`,
    description === '' ? '' : `<desc id="${id}-desc">${escapeXml(description)}</desc>`,
  ];
  return parts.join('');
}

/**
 * Splits verovio's SVG into its root id and what is inside, without verovio's own description. The inner `svg`
 * is given the size that it had, since the root's viewBox will be cut down to the ink.
 */
function openRoot(svg: string, size: Box): { readonly rootId: string; readonly content: string } {
  const match = /<svg\b[^>]*?\bid="([^"]+)"[^>]*>([\s\S]*)<\/svg>\s*$/.exec(svg);
  if (!match) throw new Error('Internal error: the engraving has no root');
  const content = (match[2] as string)
    .replace(/<desc>[^<]*<\/desc>/, '')
    .replace(
      '<svg class="definition-scale"',
      `<svg class="definition-scale" width="${size.width}" height="${size.height}"`,
    );
  return { rootId: match[1] as string, content };
}

/** The root tag of a tile: a whole document, or nested at a place on a page in millimetres. */
export function tileRoot(tile: Tile, place: { readonly x: number; readonly y: number } | null): string {
  const { drawing, mmPerUnit, rootId, widthMm, heightMm } = tile;
  const { x, y } = drawing.viewBox;
  const viewBox = [x, y, widthMm / mmPerUnit, heightMm / mmPerUnit].map((n) => +n.toFixed(3)).join(' ');
  const unit = place ? '' : 'mm';
  const at = place ? ` x="${+place.x.toFixed(3)}" y="${+place.y.toFixed(3)}"` : '';
  const role =
    tile.title === ''
      ? ' aria-hidden="true"'
      : ` role="img" aria-labelledby="${rootId}-title ${rootId}-desc"`;
  return `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" id="${rootId}"${at} width="${+widthMm.toFixed(3)}${unit}" height="${+heightMm.toFixed(3)}${unit}" viewBox="${viewBox}" overflow="visible"${role}>`;
}

/** Millimetres of a unit: by the staff space, and never so much that the ink is wider than asked for. */
function scaleOf({ staffSpaceMm, widthMm }: TileRequest, ink: Box): number {
  return Math.min(staffSpaceMm / STAFF_SPACE_UNITS, widthMm === null ? Infinity : widthMm / ink.width);
}

/** The drawing with no sign on another, as text and read. */
function apart(drawn: string): { readonly svg: string; readonly whole: Drawing } {
  const whole = readSvg(drawn);
  const svg = movedApart(drawn, whole);
  return svg === null ? { svg: drawn, whole } : { svg, whole: readSvg(svg) };
}

/**
 * Engraves one line of bars.
 * @returns the tile, as wide as asked for (or as narrow as its notes allow) and as high as its ink.
 */
export function engraveTile(toolkit: EngravingToolkit, request: TileRequest): Tile {
  const { drawn, timemap } = engrave(toolkit, request);
  const { svg, whole } = apart(drawn);
  const ink = unite(whole.shapes.map((shape) => shape.box)) ?? whole.viewBox;
  const mmPerUnit = scaleOf(request, ink);
  const widthMm = ink.width * mmPerUnit;
  const heads = whole.groups.flatMap((group) => headOfGroup(group, ink, mmPerUnit) ?? []);
  const staff = request.staff === 'bare' ? ink : (staffBox(whole) ?? ink);
  const { rootId, content } = openRoot(svg, whole.viewBox);
  const { title = '', description = '' } = request;
  const barLinesMm = barLinesOf(whole, ink, mmPerUnit);
  const tile: Tile = {
    svg: '',
    widthMm,
    heightMm: ink.height * mmPerUnit,
    staffTopMm: (staff.y - ink.y) * mmPerUnit,
    staffBottomMm: (staff.y + staff.height - ink.y) * mmPerUnit,
    heads,
    xAt: momentsOf(request, anchorsOf(whole, heads, mmPerUnit, ink), barLinesMm),
    barLinesMm,
    timemap: readTimemap(timemap),
    drawing: { ...whole, viewBox: ink },
    mmPerUnit,
    content: accessibleText(rootId, title, description) + content,
    rootId,
    title,
    description,
  };
  return { ...tile, svg: `${tileRoot(tile, null)}${tile.content}</svg>\n` };
}
