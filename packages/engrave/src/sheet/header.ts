/** The top of the first page: title, teacher, meter, tempo and feel, and a place for a scannable code. */
import { type Feel, feelSaid, formatFeel, isTriplet, type Lesson } from '@shedbook/core';
import type { Drawing } from '../svg/drawing.ts';
import { CAP_HEIGHT } from '../text/fonts.ts';
import { wrapText } from '../text/wrap.ts';
import type { Tile } from '../tile/tile.ts';
import type { FlowBlock, SheetContext } from './context.ts';
import { ACCENT, allMoved, type Block, boxOf, INK, type Item, type LineItem } from './item.ts';
import { swingNotes, tempoNote } from './mark-tiles.ts';
import { setColumn, setLine, style } from './setting.ts';
import type { SheetWords } from './sheet-words.ts';
import { printedTempi } from './tempi.ts';

/** Title sizes, the first that needs no more than two lines is taken. */
const TITLE_SIZES_MM = [9.5, 8, 6.8, 5.6];
const TITLE_LINES = 3;
const MARK_SIZE_MM = 4.6;
const MARK_STAFF_SPACE_MM = 1.3;
const MARK_GAP_MM = 9;
const CODE_MM = 22;

function titleBlock({ fonts, lesson }: SheetContext, widthMm: number): Block {
  const fitting = TITLE_SIZES_MM.find(
    (sizeMm) => wrapText(fonts, lesson.title, style('bold', sizeMm), widthMm).length <= 2,
  );
  const size = style('bold', fitting ?? (TITLE_SIZES_MM.at(-1) as number));
  return setColumn(fonts, lesson.title, size, widthMm, { maxLines: TITLE_LINES, role: 'H1' });
}

/** A row of items on one baseline, each starting where the one before ended. */
export interface Row {
  items: Item[];
  /** Where the next item starts, in millimetres. */
  x: number;
}

/** Text on the baseline y = 0. */
function say(context: SheetContext, row: Row, text: string, weight: 'regular' | 'bold' = 'regular'): void {
  const item = setLine(context.fonts, text, style(weight, MARK_SIZE_MM), { x: row.x, y: 0 });
  row.items.push(item);
  row.x += item.widthMm;
}

/** Notes whose heads stand on the baseline. */
function show(row: Row, tile: Tile): void {
  const head = Math.max(...tile.heads.map((each) => each.yMm));
  row.items.push({ kind: 'tile', x: row.x, y: -head - 0.5 * MARK_STAFF_SPACE_MM, tile });
  row.x += tile.widthMm;
}

function tempoMark(context: SheetContext): Row {
  const row: Row = { items: [], x: 0 };
  const tempi = printedTempi(context.lesson);
  show(row, tempoNote(context, tempi.beat, MARK_STAFF_SPACE_MM));
  row.x += 1.8;
  say(context, row, `= ${tempi.start}`, 'bold');
  if (tempi.goal !== tempi.start) {
    row.x += 2;
    say(context, row, context.words.goal({ bpm: tempi.goal }));
  }
  return row;
}

function feelText(feel: Feel, words: SheetWords): string {
  switch (feel.kind) {
    case 'even':
      return words.straight;
    case 'by tempo':
      return words.swingByTempo;
    case 'ratio':
      if (feel.ratio === 1) return words.straight;
      return feel.of === 'eighths' ? words.swingOf(feel) : words.swingOfSixteenths(feel);
    default:
      return feel satisfies never;
  }
}

/** How the beat is divided, where that is worth a word. */
function feelMark(context: SheetContext): Row {
  const row: Row = { items: [], x: 0 };
  const feel = feelSaid(context.lesson);
  if (feel === null) return row;
  if (feel.kind !== 'ratio' || !isTriplet(feel)) {
    say(context, row, feelText(feel, context.words));
    return row;
  }
  const [even, swung] = swingNotes(context, feel.of, MARK_STAFF_SPACE_MM);
  say(context, row, context.words.swing);
  row.x += 2.5;
  show(row, even);
  row.x += 1.8;
  say(context, row, '=');
  row.x += 1.8;
  show(row, swung);
  return row;
}

function meterMark(context: SheetContext): Row {
  const row: Row = { items: [], x: 0 };
  say(context, row, context.lesson.meter.text, 'bold');
  return row;
}

/** The hands that the sheet is for, where they are not the usual ones. */
function setUpMark(context: SheetContext): Row {
  const row: Row = { items: [], x: 0 };
  say(context, row, context.words.leftHanded);
  return row;
}

/** What the hands hold. */
function beaterMark(context: SheetContext): Row {
  const row: Row = { items: [], x: 0 };
  say(context, row, context.words.playedWith[context.lesson.playedWith]);
  return row;
}

function marksOf(context: SheetContext): readonly Row[] {
  const usual = [meterMark(context), tempoMark(context), feelMark(context)];
  if (context.lesson.playedWith === 'brushes') usual.push(beaterMark(context));
  const all = context.lesson.setUp === 'left-handed' ? [...usual, setUpMark(context)] : usual;
  return all.filter((mark) => mark.items.length > 0);
}

/** Those marks of a section that say something else than those of the section before. */
export function changedMarks(context: SheetContext, before: Lesson): readonly Row[] {
  const { meter, tempo, feel, playedWith } = context.lesson;
  const isOtherMeter = meter.text !== before.meter.text;
  const isOtherTempo = tempo.startBpm !== before.tempo.startBpm || tempo.goalBpm !== before.tempo.goalBpm;
  const isOtherFeel = formatFeel(feel) !== formatFeel(before.feel);
  const marks = [
    ...(isOtherMeter ? [meterMark(context)] : []),
    // The note that is counted may go with the meter.
    ...(isOtherTempo || isOtherMeter ? [tempoMark(context)] : []),
    ...(isOtherFeel || isOtherMeter ? [feelMark(context)] : []),
    ...(playedWith === before.playedWith ? [] : [beaterMark(context)]),
  ];
  return marks.filter((mark) => mark.items.length > 0);
}

/** Meter, tempo and feel in one row, or in more where the page is too narrow. */
export function markRow(marks: readonly Row[], widthMm: number): Block {
  const lines: Row[][] = [[]];
  let x = 0;
  for (const mark of marks) {
    if (x > 0 && x + mark.x > widthMm) {
      lines.push([]);
      x = 0;
    }
    (lines.at(-1) as Row[]).push(mark);
    x += mark.x + MARK_GAP_MM;
  }
  const items: Item[] = [];
  let y = 0;
  for (const line of lines) {
    const above = Math.max(...line.flatMap((row) => row.items.map((item) => -boxOf(item).y)));
    const below = Math.max(
      ...line.flatMap((row) => row.items.map((item) => boxOf(item).y + boxOf(item).height)),
    );
    let left = 0;
    for (const row of line) {
      items.push(...allMoved(row.items, left, y + above));
      left += row.x + MARK_GAP_MM;
    }
    y += above + below;
  }
  return { widthMm, heightMm: y, items };
}

/** A full-width rule that starts thick, in the accent. */
function rule(widthMm: number): readonly LineItem[] {
  return [
    { kind: 'line', x: 0, y: 0.7, x2: widthMm, y2: 0.7, strokeMm: 0.3, colour: INK },
    { kind: 'line', x: 0, y: 0.7, x2: 26, y2: 0.7, strokeMm: 1.4, colour: ACCENT },
  ];
}

function code(drawing: Drawing, contentWidthMm: number): Item {
  const { width, height } = drawing.viewBox;
  const scale = CODE_MM / Math.max(width, height);
  const size = { width: width * scale, height: height * scale };
  return { kind: 'picture', x: contentWidthMm - size.width, y: 0, ...size, drawing };
}

/** The header as one block. @param picture a code to print in its corner, or null */
export function layOutHeader(context: SheetContext, picture: Drawing | null): FlowBlock {
  const { contentWidthMm, fonts, lesson } = context;
  const widthMm = contentWidthMm - (picture ? CODE_MM + 5 : 0);
  const title = titleBlock(context, widthMm);
  const items: Item[] = [...title.items];
  let y = title.heightMm;
  if (lesson.by) {
    const by = setColumn(fonts, lesson.by, style('italic', 4.6), widthMm, { maxLines: 2 });
    items.push(...allMoved(by.items, 0, y + 0.6));
    y += by.heightMm + 0.6;
  }
  if (picture) {
    items.push(code(picture, contentWidthMm));
    y = Math.max(y, CODE_MM);
  }
  items.push(...allMoved(rule(contentWidthMm), 0, y + 1.6));
  y += 3.8;
  const row = markRow(marksOf(context), contentWidthMm);
  items.push(...allMoved(row.items, 0, y));
  return { gapMm: 0, heightMm: y + row.heightMm, items };
}

/** The line at the foot of a page: what it belongs to, and its number. */
export function layOutFooter(context: SheetContext, page: number, pages: number): Block {
  const { contentWidthMm, fonts, lesson } = context;
  const size = style('regular', 3.4);
  const y = CAP_HEIGHT * size.sizeMm + 1;
  const number = setLine(fonts, `${page} / ${pages}`, style('bold', 3.4), {
    x: contentWidthMm,
    y,
    align: 'right',
    role: 'aside',
  });
  const name = lesson.by ? `${lesson.title} · ${lesson.by}` : lesson.title;
  const [line = ''] = wrapText(fonts, name, size, contentWidthMm - number.widthMm - 8, 1);
  const items: readonly Item[] = [setLine(fonts, line, size, { x: 0, y, role: 'aside' }), number];
  return { widthMm: contentWidthMm, heightMm: y + 1.2, items };
}
