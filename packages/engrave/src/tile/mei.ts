/**
 * Notated bars as MEI, the form in which verovio takes music.
 *
 * Conventions: every head has the id `PREFIX-bBAR-NUM-DEN-VOICE`, its bar from 1 and its start in the bar in whole
 * notes, so positions can be found again in what is engraved. Layer 1 has stems up, layer 2 stems down.
 * Source: MEI 5.1 guidelines, CMN and percussion (`@loc` counts from the bottom line; `@head.shape` takes SMuFL
 * code points; `@head.mod`, `@stem.mod`, `@grace`).
 */
import {
  type Articulation,
  escapeXml,
  GRACE_NOTES,
  type Meter,
  type NotatedBar,
  type NotatedEvent,
  type NotatedGroup,
  type NotatedHead,
  type NotatedLayer,
  STAFF_POSITIONS,
} from '@shedbook/core';
import { accentId, accentsOf } from './accents.ts';
import { HEAD_CODE_POINTS, type Head, headOf } from './heads.data.ts';
import { tiesOf } from './ties.ts';

/** `full`: five lines. `line`: one line. `bare`: no line at all, for marks in running text. */
export type Staff = 'full' | 'line' | 'bare';

/** Repeat signs round a bar, and a sign in place of its notes. */
export interface MeiBarSigns {
  readonly opens: boolean;
  readonly closes: boolean;
  /** `two` stands for this bar and the next, which is then `blank`. */
  readonly sign: 'one' | 'two' | 'blank' | null;
}

/** How bars are written. */
export interface MeiOptions {
  readonly prefix: string;
  readonly staff: Staff;
  /** Clef and meter before the first bar. */
  readonly signature: boolean;
  /** `repeat`: a repeat sign at the end. `open`: no bar lines. */
  readonly barLines: 'single' | 'repeat' | 'open';
  /** What stands at each bar; nothing where left out. */
  readonly signs?: readonly MeiBarSigns[];
  /** Number of the first bar. */
  readonly firstBar: number;
  /** Whether notes have stems; a legend shows heads alone. */
  readonly stems: boolean;
}

interface Writing {
  readonly options: MeiOptions;
  /** From 1. */
  readonly bar: number;
  readonly stems: 'up' | 'down';
  /** Number of the layer, from 1. */
  readonly layer: number;
  /** Whether the bar has a second layer to keep clear of. On one line there must be none. */
  readonly shared: boolean;
  /** Whether a hand plays in a layer whose stems go down: rests of the one above keep clear of its heads. */
  readonly isCrowded: boolean;
}

/** Id of a head. Bars count from 1. */
export function headId(prefix: string, bar: number, event: NotatedEvent, head: NotatedHead): string {
  return `${eventId(prefix, bar, event)}-${head.voice}`;
}

function eventId(prefix: string, bar: number, event: NotatedEvent): string {
  return `${prefix}-b${bar}-${event.start.num}-${event.start.den}`;
}

/** Staff position of a head: everything stands on the one line where there is one. */
function positionOf(writing: Writing, head: NotatedHead): number {
  return writing.options.staff === 'full' ? STAFF_POSITIONS[head.voice] : 0;
}

function restPosition({ options, shared, stems, isCrowded }: Writing): number {
  if (options.staff !== 'full') return 0;
  if (!shared) return 4;
  return stems === 'up' ? (isCrowded ? 8 : 6) : 0;
}

function shapeAttribute(head: NotatedHead): string {
  const shape = headOf(head);
  if (shape === 'noteheadBlack') return '';
  if (shape === 'noteheadXBlack') return ' head.shape="x"';
  if (shape === 'noteheadDiamondBlack') return ' head.shape="diamond"';
  return ` head.auth="smufl" head.shape="U+${HEAD_CODE_POINTS[shape]}"`;
}

function placeAttributes(writing: Writing, head: NotatedHead): string {
  return `loc="${positionOf(writing, head)}"${shapeAttribute(head)}`;
}

/** Grace notes before a stroke: one slashed eighth, or two beamed sixteenths; their stems go up in either voice. */
function graceNotes(writing: Writing, event: NotatedEvent): string {
  return event.heads
    .map((head) => {
      const grace = (dur: number) =>
        `<note grace="unacc" dur="${dur}" stem.dir="up" ${placeAttributes(writing, head)}/>`;
      const count = GRACE_NOTES[head.articulation];
      if (count === 0) return '';
      return count === 1 ? grace(8) : `<graceGrp><beam>${grace(16)}${grace(16)}</beam></graceGrp>`;
    })
    .join('');
}

/** Signs of a stem; what stands beside a head is engraved under the stem and moved there afterwards. */
function articulations(writing: Writing, event: NotatedEvent): string {
  const { outside, beside } = accentsOf(event, writing.stems);
  const isUp = writing.stems === 'up';
  const open = event.heads.some((head) => head.voice === 'hihat-open') ? ['open'] : [];
  const outer = outside.length > 0 ? ['acc'] : [];
  const above = isUp ? [...open, ...outer] : open;
  const below = isUp ? [] : outer;
  const sign = (names: readonly string[], place: string) =>
    names.length === 0 ? '' : `<artic artic="${names.join(' ')}" place="${place}"/>`;
  const moved = beside.map((head) => {
    const id = accentId(headId(writing.options.prefix, writing.bar, event, head));
    return `<artic xml:id="${escapeXml(id)}" artic="acc" place="${isUp ? 'below' : 'above'}"/>`;
  });
  return sign(above, 'above') + sign(below, 'below') + moved.join('');
}

/** What stands on the stem of a stroke, by MEI's names, or null for nothing. */
const STEM_MODIFIERS: Readonly<Record<Articulation, 'z' | null>> = {
  normal: null,
  bell: null,
  splash: null,
  buzz: 'z',
  tap: null,
  sweep: null,
  flam: null,
  drag: null,
};

function stemModifier(event: NotatedEvent): string {
  const sign = event.heads.map((head) => STEM_MODIFIERS[head.articulation]).find((each) => each !== null);
  return sign ? ` stem.mod="${sign}"` : '';
}

/** Length of a stem, in half staff spaces: an octave. @source common practice */
const STEM_HALF_SPACES = 7;

/** The same where a flag would hang beside a parenthesis or a head that reaches over a space. */
const FLAGGED_WIDE_HALF_SPACES = 9;

/** The same where a flag hangs beyond the sign of a buzz. */
const FLAGGED_BUZZ_HALF_SPACES = 12;

/** The same where a flag turns back to its head, as those of stems that go down do. */
const FLAGGED_DOWN_HALF_SPACES = 8;

/** Heads that reach over a space: with a stroke through them, or all stroke. */
const TALL: readonly Head[] = ['noteheadSlashedBlack1', 'noteheadSlashHorizontalEnds'];

/** Whether a head or its parentheses reach to where a flag would hang. */
function isWide(head: NotatedHead): boolean {
  return head.ghost || TALL.includes(headOf(head));
}

function stemLength(event: NotatedEvent, stems: 'up' | 'down'): string {
  const isFlagged = event.value.base >= 8;
  if (event.beamed || event.value.base < 2) return '';
  if (stemModifier(event) !== '') {
    // Verovio sets the sign of a buzz by the stem that it would draw itself.
    return isFlagged ? ` stem.len="${FLAGGED_BUZZ_HALF_SPACES}"` : '';
  }
  if (isFlagged && event.heads.some(isWide)) return ` stem.len="${FLAGGED_WIDE_HALF_SPACES}"`;
  return ` stem.len="${isFlagged && stems === 'down' ? FLAGGED_DOWN_HALF_SPACES : STEM_HALF_SPACES}"`;
}

function duration(event: NotatedEvent): string {
  return `dur="${event.value.base}"${event.value.dots === 1 ? ' dots="1"' : ''}`;
}

function writeHead(
  writing: Writing,
  event: NotatedEvent,
  head: NotatedHead,
  more: string,
  inner: string,
): string {
  const id = escapeXml(headId(writing.options.prefix, writing.bar, event, head));
  const ghost = head.ghost ? ' head.mod="paren"' : '';
  return `<note xml:id="${id}" ${more} ${placeAttributes(writing, head)}${ghost}>${inner}</note>`;
}

function writeNote(writing: Writing, event: NotatedEvent): string {
  const hidden = writing.options.stems ? '' : ' stem.visible="false"';
  const stem = `${duration(event)} stem.dir="${writing.stems}"${stemLength(event, writing.stems)}${hidden}${stemModifier(event)}`;
  const [first, ...others] = event.heads;
  if (!first) return '';
  if (others.length === 0) return writeHead(writing, event, first, stem, articulations(writing, event));
  const heads = event.heads.map((head) => writeHead(writing, event, head, '', '')).join('');
  return `<chord ${stem}>${articulations(writing, event)}${heads}</chord>`;
}

function writeEvent(writing: Writing, event: NotatedEvent): string {
  if (event.kind === 'note') return writeNote(writing, event);
  const id = escapeXml(`${eventId(writing.options.prefix, writing.bar, event)}-${writing.layer}-rest`);
  // A third voice is read by its notes: its rests would stand on those of the others.
  if (writing.layer > 2) return `<space ${duration(event)}/>`;
  return `<rest xml:id="${id}" ${duration(event)} loc="${restPosition(writing)}"/>`;
}

/** Runs of events that are all beamed or all not. */
function beamRuns(events: readonly NotatedEvent[]): readonly (readonly NotatedEvent[])[] {
  const runs: NotatedEvent[][] = [];
  for (const event of events) {
    const run = runs.at(-1);
    if (run && run[0]?.beamed === event.beamed) run.push(event);
    else runs.push([event]);
  }
  return runs;
}

/** A run under one beam or under none, without the grace notes of its first note. */
function writeRun(writing: Writing, run: readonly NotatedEvent[]): string {
  const inner = run
    .map((event, index) => (index === 0 ? '' : graceNotes(writing, event)) + writeEvent(writing, event))
    .join('');
  return run[0]?.beamed ? `<beam>${inner}</beam>` : inner;
}

/**
 * One beat, or a rest over more. Grace notes before a beam or tuplet stand outside it: verovio would join them to
 * the beam and print the tuplet's number as small as they are.
 */
function writeGroup(writing: Writing, group: NotatedGroup, meter: Meter): string {
  if (group.beats === meter.beats.length && group.events.every((event) => event.kind === 'rest')) {
    return writing.layer > 2 ? '<mSpace/>' : `<mRest loc="${restPosition(writing)}"/>`;
  }
  const before = (run: readonly NotatedEvent[]) =>
    run
      .slice(0, 1)
      .map((event) => graceNotes(writing, event))
      .join('');
  const events = beamRuns(group.events)
    .map((run, index) => (index === 0 ? '' : before(run)) + writeRun(writing, run))
    .join('');
  return before(group.events) + (group.tuplet ? writeTuplet(writing, group.tuplet, events) : events);
}

function writeTuplet(writing: Writing, tuplet: NonNullable<NotatedGroup['tuplet']>, events: string): string {
  const { actual, normal, bracket } = tuplet;
  const place = writing.stems === 'up' ? 'above' : 'below';
  return `<tuplet num="${actual}" numbase="${normal}" bracket.visible="${bracket}" num.place="${place}" bracket.place="${place}">${events}</tuplet>`;
}

function writeLayer(writing: Writing, layer: NotatedLayer, meter: Meter): string {
  const groups = layer.groups.map((group) => writeGroup(writing, group, meter)).join('');
  return `<layer n="${layer.layer}">${groups}</layer>`;
}

function leftBarLine({ barLines, signs }: MeiOptions): string {
  if (barLines === 'open') return ' left="invis"';
  return signs?.[0]?.opens ? ' left="rptstart"' : ' left="single"';
}

/** The line after a bar: a repeat that begins with the next bar stands there too. */
function rightBarLine({ barLines, signs }: MeiOptions, index: number, isLast: boolean): string {
  if (barLines === 'open') return ' right="invis"';
  const closes = signs?.[index]?.closes || (isLast && barLines === 'repeat');
  const opens = signs?.[index + 1]?.opens ?? false;
  const line = closes ? (opens ? 'rptboth' : 'rptend') : opens ? 'rptstart' : 'single';
  return ` right="${line}"`;
}

/** A sign in place of what each layer has. */
function writeSign(bar: NotatedBar, sign: NonNullable<MeiBarSigns['sign']>): string {
  const { upper, lower } = bar.meter;
  const blank = `<space dur="${lower}"/>`.repeat(upper);
  const first = sign === 'one' ? '<mRpt num.visible="false"/>' : sign === 'two' ? '<mRpt2/>' : blank;
  return bar.layers
    .map(({ layer }, index) => `<layer n="${layer}">${index === 0 ? first : '<mSpace/>'}</layer>`)
    .join('');
}

function writeBar(bars: readonly NotatedBar[], index: number, options: MeiOptions): string {
  const bar = bars[index] as NotatedBar;
  const left = index === 0 ? leftBarLine(options) : '';
  const right = rightBarLine(options, index, index === bars.length - 1);
  const sign = options.signs?.[index]?.sign ?? null;
  const layers = sign ? writeSign(bar, sign) : writeLayers(bar, index, options);
  const ties = sign
    ? ''
    : tiesOf(bars, index, (of, event, head) => headId(options.prefix, options.firstBar + of, event, head));
  return `<measure${left}${right}><staff n="1">${layers}</staff>${ties}</measure>`;
}

/** Staff position over which a head stands in the way of rests in the middle of the staff. */
const HIGH = 4;

/** Whether something is held high on the staff under stems that go down. */
function isHandBelow({ stems, groups }: NotatedLayer): boolean {
  const heads = groups.flatMap(({ events }) => events.flatMap((event) => event.heads));
  return stems === 'down' && heads.some(({ isHeld, voice }) => isHeld && STAFF_POSITIONS[voice] > HIGH);
}

function writeLayers(bar: NotatedBar, index: number, options: MeiOptions): string {
  const shared = bar.layers.length > 1;
  const isCrowded = bar.layers.some(isHandBelow);
  return bar.layers
    .map((layer) => {
      const alone = bar.layers.length === 1;
      const writing = {
        options,
        bar: options.firstBar + index,
        stems: layer.stems,
        layer: layer.layer,
        shared: shared && !alone,
        isCrowded,
      };
      return writeLayer(writing, layer, bar.meter);
    })
    .join('');
}

function staffDefinition(meter: Meter, options: MeiOptions): string {
  const lines = options.staff === 'full' ? 5 : 1;
  const hidden = options.staff === 'bare' ? ' lines.visible="false"' : '';
  const count = meter.text.slice(0, meter.text.indexOf('/'));
  const signature = options.signature
    ? `<clef shape="perc" line="${lines === 5 ? 3 : 1}"/><meterSig count="${count}" unit="${meter.lower}"/>`
    : '';
  return `<staffDef n="1" lines="${lines}"${hidden}>${signature}</staffDef>`;
}

/** The bars as a whole MEI document of one line of music. */
export function writeMei(bars: readonly NotatedBar[], options: MeiOptions): string {
  const meter = (bars[0] as NotatedBar).meter;
  const measures = bars.map((_, index) => writeBar(bars, index, options)).join('');
  return `<mei xmlns="http://www.music-encoding.org/ns/mei" meiversion="5.1"><meiHead><fileDesc><titleStmt><title/></titleStmt><pubStmt/></fileDesc></meiHead><music><body><mdiv><score><scoreDef><staffGrp>${staffDefinition(meter, options)}</staffGrp></scoreDef><section><sb/>${measures}</section></score></mdiv></body></music></mei>`;
}
