/**
 * Laying a spelled bar out for the screen: slots of a beat stand at equal distances, so that a place on the
 * page is a place in the pattern. The printed sheet is engraved elsewhere; this draws what is being written.
 *
 * Conventions: ten units are one staff space; x from the left end of the bar, y downward from the middle line
 * (or the only one).
 */
import {
  type Articulation,
  beatStarts,
  HEAD_KINDS,
  handsTogether,
  type NotatedBar,
  type NotatedEvent,
  type NotatedGroup,
  STAFF_POSITIONS,
  toNumber,
  type Voice,
} from '@shedbook/core';
import { GLYPHS, type Glyph } from './glyphs.data.ts';
import { headOf } from './staff.ts';

/** Units of one staff space. */
export const SPACE = 10;

/** Where the voices stand: all on one line, or on five. */
export type StaffKind = 'one line' | 'five lines';

/** A glyph with its origin, in tenths of a staff space. */
export interface PlacedGlyph {
  readonly glyph: Glyph;
  readonly x: number;
  readonly y: number;
}

/** A straight stroke: stem, beam, bracket, slash; in tenths of a staff space. */
export interface PlacedLine {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  readonly width: number;
}

/** A letter or number, placed in tenths of a staff space. */
export interface PlacedText {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly kind: 'tuplet' | 'sticking' | 'articulation';
}

/** A tie from the place of a head to where it goes on, over a bar line or from one too, in tenths of a staff space. */
export interface PlacedTie {
  readonly x1: number;
  readonly x2: number;
  readonly y: number;
}

/** A bar ready to be drawn, in tenths of a staff space. */
export interface BarLayout {
  readonly width: number;
  /** Highest y with ink. */
  readonly top: number;
  /** Lowest y with ink. */
  readonly bottom: number;
  readonly glyphs: readonly PlacedGlyph[];
  readonly lines: readonly PlacedLine[];
  readonly dots: readonly { readonly x: number; readonly y: number }[];
  readonly rings: readonly { readonly x: number; readonly y: number }[];
  /** Ties under heads. */
  readonly ties: readonly PlacedTie[];
  readonly texts: readonly PlacedText[];
}

/** Width of a beat of a quarter note where there is room for it, in units. */
export const QUARTER_WIDTH = 96;

/** From the start of a beat to the middle of the head on it. */
export const BEAT_LEAD = 16;

/** Room after the last beat, in units. */
export const BAR_TAIL = 10;

/** Advance of each head in staff spaces: for stems. Source: Leland's outlines. */
const HEAD_WIDTH = 12.9;

const STEM_LENGTH = 34;
const BEAM_THICKNESS = 5;
const BEAM_STEP = 7.5;

/** Left end of each beat and of the bar line after them, in units; a quarter note takes `quarterWidth`. */
export function beatEdges(bar: NotatedBar['meter'], quarterWidth = QUARTER_WIDTH): readonly number[] {
  const whole = 4 * quarterWidth;
  const starts = beatStarts(bar).map((start) => toNumber(start) * whole);
  return [...starts, toNumber(bar.bar) * whole];
}

/** Where a slot's head stands, in units. */
export function slotX(edges: readonly number[], beat: number, phase: number): number {
  const from = edges[beat] ?? 0;
  const to = edges[beat + 1] ?? from;
  return from + BEAT_LEAD + phase * (to - from);
}

/** Height of a voice's head, in units. */
export function headY(voice: Voice, staff: StaffKind): number {
  return staff === 'one line' ? 0 : ((4 - STAFF_POSITIONS[voice]) * SPACE) / 2;
}

function yOf(event: NotatedEvent, index: number, staff: StaffKind): number {
  const voice = event.heads[index]?.voice;
  return voice ? headY(voice, staff) : 0;
}

function beamsOf(event: NotatedEvent): number {
  return { 8: 1, 16: 2, 32: 3, 64: 4 }[event.value.base as number] ?? 0;
}

const RESTS: Readonly<Record<number, Glyph>> = {
  1: 'wholeRest',
  2: 'halfRest',
  4: 'quarterRest',
  8: 'eighthRest',
  16: 'sixteenthRest',
  32: 'thirtySecondRest',
};

const REST_WIDTHS: Readonly<Record<number, number>> = { 1: 13, 2: 13, 4: 9.7, 8: 9.6, 16: 12, 32: 14 };

const FLAGS: Readonly<Record<'up' | 'down', readonly (Glyph | null)[]>> = {
  up: [null, 'eighthFlagUp', 'sixteenthFlagUp', 'thirtySecondFlagUp'],
  down: [null, 'eighthFlagDown', 'sixteenthFlagDown', 'sixteenthFlagDown'],
};

type Stems = 'up' | 'down';

/** What is being gathered while a bar is laid out. */
interface Ink {
  readonly glyphs: PlacedGlyph[];
  readonly lines: PlacedLine[];
  readonly dots: { x: number; y: number }[];
  readonly rings: { x: number; y: number }[];
  readonly ties: PlacedTie[];
  readonly texts: PlacedText[];
}

interface Placed {
  readonly event: NotatedEvent;
  readonly x: number;
  readonly ys: readonly number[];
}

function drawHeads(ink: Ink, placed: Placed, perWhole: number): void {
  placed.event.heads.forEach((head, index) => {
    const y = placed.ys[index] ?? 0;
    const left = placed.x - HEAD_WIDTH / 2;
    ink.glyphs.push({ glyph: headOf(head.voice, head.articulation), x: left, y });
    if (head.ghost) {
      ink.glyphs.push({ glyph: 'openParenthesis', x: left - 6, y });
      ink.glyphs.push({ glyph: 'closeParenthesis', x: left + HEAD_WIDTH + 1, y });
    }
    if (HEAD_KINDS[head.voice] === 'slashed') {
      ink.lines.push({ x1: left - 2, y1: y + 7, x2: left + HEAD_WIDTH + 2, y2: y - 7, width: 1.6 });
    }
    if (head.voice === 'hihat-open' || head.articulation === 'splash') ink.rings.push({ x: placed.x, y });
    if (placed.event.value.dots === 1) ink.dots.push({ x: left + HEAD_WIDTH + 4, y: y - 2.5 });
    const { start, duration } = placed.event;
    if (head.goesOn) ink.ties.push({ x1: placed.x, x2: placed.x + toNumber(duration) * perWhole, y });
    if (head.isHeld && start.num === 0) ink.ties.push({ x1: placed.x - BEAT_LEAD, x2: placed.x, y });
  });
}

/** Letters that stand beside a stem for a way of striking, or null where its head says it. */
const ARTICULATION_LETTERS: Readonly<Record<Articulation, string | null>> = {
  normal: null,
  bell: null,
  splash: null,
  buzz: 'z',
  tap: null,
  sweep: null,
  flam: 'fl',
  drag: 'dr',
};

/** Everything outside the staff that belongs to one chord: accent, hands, flam, drag and buzz. */
function drawSigns(ink: Ink, placed: Placed, tip: number, stems: Stems): void {
  const away = stems === 'up' ? -1 : 1;
  const accented = placed.event.heads.some((head) => head.accent);
  if (accented)
    ink.glyphs.push({ glyph: 'accent', x: placed.x - 6.5, y: tip + away * 6 + (away < 0 ? 0 : 9) });
  const letters = placed.event.heads.map((head) => ARTICULATION_LETTERS[head.articulation]).find(Boolean);
  if (letters) ink.texts.push({ text: letters, x: placed.x - 12, y: tip + 8, kind: 'articulation' });
  const hand = handsTogether(placed.event.heads.flatMap((head) => head.sticking ?? []));
  if (hand) ink.texts.push({ text: hand, x: placed.x, y: 27, kind: 'sticking' });
}

function stemX(placed: Placed, stems: Stems): number {
  return stems === 'up' ? placed.x + HEAD_WIDTH / 2 - 0.7 : placed.x - HEAD_WIDTH / 2 + 0.7;
}

/** How far a stem stands out further where its flag is to end above rests, heads and bar lines, in units. */
const FLAG_CLEARANCE = 10;

/** Whether any of these carries a flag. */
const isFlagged = (notes: readonly Placed[]) =>
  notes.some(({ event }) => !event.beamed && beamsOf(event) > 0);

/** Where stems end, the same for a whole group so that beams lie level. */
function tipOf(group: readonly Placed[], stems: Stems): number {
  const ys = group.flatMap((placed) => placed.ys);
  return stems === 'up' ? Math.min(0, ...ys) - STEM_LENGTH : Math.max(0, ...ys) + STEM_LENGTH;
}

function drawStem(ink: Ink, placed: Placed, tip: number, stems: Stems): void {
  const x = stemX(placed, stems);
  const from = stems === 'up' ? Math.max(...placed.ys) - 1.5 : Math.min(...placed.ys) + 1.5;
  ink.lines.push({ x1: x, y1: from, x2: x, y2: tip, width: 1.3 });
  const flag = placed.event.beamed ? null : FLAGS[stems][beamsOf(placed.event)];
  if (flag) ink.glyphs.push({ glyph: flag, x: x - 0.6, y: tip });
}

function drawBeams(ink: Ink, beamed: readonly Placed[], tip: number, stems: Stems): void {
  const toward = stems === 'up' ? 1 : -1;
  const beam = (x1: number, x2: number, level: number) => {
    const y = tip + toward * (BEAM_THICKNESS / 2 + (level - 1) * BEAM_STEP);
    ink.lines.push({ x1: x1 - 0.65, y1: y, x2: x2 + 0.65, y2: y, width: BEAM_THICKNESS });
  };
  beamed.forEach((placed, index) => {
    const next = beamed[index + 1];
    const previous = beamed[index - 1];
    for (let level = 1; level <= beamsOf(placed.event); level += 1) {
      const reaches = (other: Placed | undefined) => other !== undefined && beamsOf(other.event) >= level;
      if (reaches(next)) beam(stemX(placed, stems), stemX(next as Placed, stems), level);
      else if (!reaches(previous)) {
        const x = stemX(placed, stems);
        beam(previous ? x - 9 : x, previous ? x : x + 9, level);
      }
    }
  });
}

function drawTuplet(
  ink: Ink,
  group: NotatedGroup,
  placed: readonly Placed[],
  tip: number,
  stems: Stems,
): void {
  if (!group.tuplet) return;
  const xs = placed.map((each) => each.x);
  const left = Math.min(...xs) - 5;
  const right = Math.max(...xs) + 7;
  const y = stems === 'up' ? Math.min(tip, -STEM_LENGTH) - 15 : tip + 22;
  const middle = (left + right) / 2;
  ink.texts.push({ text: String(group.tuplet.actual), x: middle, y, kind: 'tuplet' });
  if (!group.tuplet.bracket) return;
  const level = y - 4;
  const hook = level + (stems === 'up' ? 5 : -5);
  const side = (from: number, to: number, end: number) => {
    ink.lines.push({ x1: from, y1: level, x2: to, y2: level, width: 1 });
    ink.lines.push({ x1: end, y1: level, x2: end, y2: hook, width: 1 });
  };
  side(left, middle - 7, left);
  side(middle + 7, right, right);
}

function drawRest(ink: Ink, x: number, event: NotatedEvent, y: number): void {
  const glyph = RESTS[event.value.base] ?? 'quarterRest';
  const half = (REST_WIDTHS[event.value.base] ?? 10) / 2;
  ink.glyphs.push({ glyph, x: x - half, y });
  if (event.value.dots === 1) ink.dots.push({ x: x + half + 4, y: y - 2.5 });
}

function placeEvents(group: NotatedGroup, edges: readonly number[], staff: StaffKind): readonly Placed[] {
  return group.events.map((event) => ({
    event,
    x: slotX(edges, group.beat, event.slot / event.slots),
    ys: event.heads.map((_, index) => yOf(event, index, staff)),
  }));
}

/** Where the rest of a silent bar stands: in the middle, or on its first beat where the bar is broken in rows. */
export type BarRestPlace = 'middle' | 'start';

/** Beats of a bar that are drawn, from 0; the end is left out. */
export interface BeatSpan {
  readonly fromBeat: number;
  readonly toBeat: number;
}

/** A rest over more than one beat stands in the middle of what it covers, or on its first beat where that is cut. */
function restX(group: NotatedGroup, placed: Placed, { edges, barRest, span }: LayerLook): number {
  const isCut = group.beat + group.beats > span.toBeat;
  const atStart = isCut || (barRest === 'start' && placed.event.value.base === 1);
  if (group.beats < 2 || atStart) return placed.x;
  return ((edges[group.beat] ?? 0) + (edges[group.beat + group.beats] ?? 0)) / 2;
}

/** What holds for every group of a layer. */
interface LayerLook {
  readonly edges: readonly number[];
  readonly staff: StaffKind;
  readonly stems: Stems;
  readonly restY: number;
  readonly barRest: BarRestPlace;
  readonly span: BeatSpan;
  readonly liftsFlags: boolean;
  /** Units that a whole note takes. */
  readonly perWhole: number;
}

function drawGroup(ink: Ink, group: NotatedGroup, look: LayerLook): void {
  const { edges, staff, stems, restY } = look;
  const placed = placeEvents(group, edges, staff);
  const notes = placed.filter((each) => each.event.kind === 'note');
  const lift = look.liftsFlags && stems === 'up' && isFlagged(notes) ? FLAG_CLEARANCE : 0;
  const tip = tipOf(notes, stems) - lift;
  for (const each of placed) {
    if (each.event.kind === 'rest') {
      const bar = each.event.value.base === 1 ? -SPACE : 0;
      drawRest(ink, restX(group, each, look), each.event, restY + (staff === 'one line' ? 0 : bar));
      continue;
    }
    drawHeads(ink, each, look.perWhole);
    drawStem(ink, each, tip, stems);
    drawSigns(ink, each, tip, stems);
  }
  drawBeams(
    ink,
    notes.filter((each) => each.event.beamed),
    tip,
    stems,
  );
  drawTuplet(ink, group, placed, notes.length > 0 ? tip : stems === 'up' ? -20 : 20, stems);
}

/** What of a bar is laid out, and how wide. */
export interface LayoutOptions {
  /** Units that a quarter note takes. */
  readonly quarterWidth?: number;
  /** Beats that are drawn; all when left out. Places stay those of the whole bar. */
  readonly span?: BeatSpan;
  /** Whether flags end above what stands beside them, for bars as close as can be; else stems are all as long. */
  readonly liftsFlags?: boolean;
}

/** A bar laid out on one line or on five. */
export function layOutBar(
  bar: NotatedBar,
  staff: StaffKind,
  barRest: BarRestPlace = 'middle',
  {
    quarterWidth = QUARTER_WIDTH,
    span = { fromBeat: 0, toBeat: bar.meter.beats.length },
    liftsFlags = false,
  }: LayoutOptions = {},
): BarLayout {
  const ink: Ink = { glyphs: [], lines: [], dots: [], rings: [], ties: [], texts: [] };
  const edges = beatEdges(bar.meter, quarterWidth);
  const both = bar.layers.length > 1;
  for (const layer of bar.layers) {
    const restY = both ? (layer.stems === 'up' ? -SPACE : 2 * SPACE) : 0;
    const stems = staff === 'one line' ? 'up' : layer.stems;
    for (const group of layer.groups) {
      if (group.beat < span.fromBeat || group.beat >= span.toBeat) continue;
      drawGroup(ink, group, {
        ...{ edges, staff, stems, restY, barRest, span, liftsFlags },
        perWhole: 4 * quarterWidth,
      });
    }
  }
  const ys = [...ink.lines.flatMap((line) => [line.y1, line.y2]), ...ink.glyphs.map((glyph) => glyph.y)];
  const accents = ink.glyphs.some((glyph) => glyph.glyph === 'accent') ? 14 : 0;
  const tuplets = ink.texts.some((text) => text.kind === 'tuplet') ? 30 : 0;
  return {
    width: (edges.at(-1) ?? 0) + BAR_TAIL,
    top: Math.min(-40, ...ys) - Math.max(accents, tuplets, 6),
    bottom: Math.max(16, ...ys) + (staff === 'five lines' ? 12 : 0),
    ...ink,
  };
}

/** Every glyph's outline, for a sheet of symbols drawn once. */
export const GLYPH_OUTLINES = Object.entries(GLYPHS) as readonly (readonly [Glyph, string])[];
