/**
 * Exercises in a grid of equal columns, read row by row. An exercise takes a column for each of its bars, and more
 * where its notes need them; one that is longer than a row goes on in the next.
 */
import { exerciseLabel } from '@shedbook/core';
import type { FlowBlock, SheetContext } from './context.ts';
import { type ExerciseLine, layOutLine } from './exercise-line.ts';
import { headingsOf } from './headings.ts';
import { allMoved, type GroupItem } from './item.ts';
import { GUTTER_GAP_MM, NUMBER_MM } from './over-notes.ts';
import { movedLine } from './places.ts';
import { type Beside, lineWidthMm, type PreparedExercise, prepareExercise } from './prepare.ts';
import { exerciseTitle } from './sheet-words.ts';

const COLUMN_GAP_MM = 7;
const ROW_GAP_MM = 4.6;

/** The most columns of a page. */
const MOST_COLUMNS = 3;

/** Names over exercises beside each other that are no further from level than this stand level. */
const MOST_LIFT_MM = 5;

/** How much wider than its least a bar is given where that many columns stand abreast. */
const COMFORT: readonly number[] = [1, 1, 1.02, 1.15];

/** The same for several bars on one line. */
const COMFORT_IN_LINE = 1.12;

/** The share of bars that must have room in a column, and how much smaller all may become for it. */
const COMFORTABLE_SHARE = 0.8;
const LEAST_SHRINK = 0.9;

/** A bar that has a row to itself is not drawn out further than this beyond the least of the widest. */
const MOST_STRETCH = 1.25;

interface Grid {
  readonly columns: number;
  readonly columnMm: number;
  readonly gutterMm: number;
  /** How much smaller the notation is, so that the columns hold it; at most 1. */
  readonly shrink: number;
  /** The widest least of a bar, before it is made smaller. */
  readonly widestMm: number;
}

function cellWidthMm(grid: Grid, span: number): number {
  return span * grid.columnMm + (span - 1) * COLUMN_GAP_MM;
}

function gutterWidthMm({ fonts, numbers }: SheetContext): number {
  const widest = Math.max(
    0,
    ...numbers.map((number) => fonts.widthMm(exerciseLabel(number), 'bold', NUMBER_MM)),
  );
  return widest + GUTTER_GAP_MM;
}

function withColumns(context: SheetContext, columns: number, widestMm: number, shrink = 1): Grid {
  const columnMm = (context.contentWidthMm - (columns - 1) * COLUMN_GAP_MM) / columns;
  return { columns, columnMm, gutterMm: gutterWidthMm(context), shrink, widestMm };
}

/** As many columns as give most bars room, the notation a little smaller where that makes one more. */
function chooseGrid(context: SheetContext, prepared: readonly PreparedExercise[]): Grid {
  const widths = prepared
    .flatMap((each) => each.bars.map((_, bar) => lineWidthMm(context, each, bar, bar + 1)))
    .toSorted((a, b) => a - b);
  const wide = widths[Math.ceil(COMFORTABLE_SHARE * widths.length) - 1] ?? 0;
  const widest = widths.at(-1) ?? 0;
  for (let columns = MOST_COLUMNS; columns > 1; columns -= 1) {
    const { columnMm, gutterMm } = withColumns(context, columns, widest);
    const shrink = Math.min(1, (columnMm - gutterMm) / ((COMFORT[columns] as number) * wide));
    if (shrink >= LEAST_SHRINK) return withColumns(context, columns, widest, shrink);
  }
  return withColumns(context, 1, widest);
}

interface GridLine {
  readonly prepared: PreparedExercise;
  readonly from: number;
  readonly to: number;
  readonly span: number;
  /** Below 1 where even a whole row is too narrow. */
  readonly shrink: number;
  /** How much wider its cell is than its columns: below 0 where it gives room to another of its row. */
  readonly widerMm: number;
}

/** Columns that a line needs, or null when no row holds it. */
function spanFor(
  context: SheetContext,
  grid: Grid,
  prepared: PreparedExercise,
  from: number,
  to: number,
): number | null {
  const width = lineWidthMm(context, prepared, from, to);
  for (let span = Math.min(grid.columns, to - from); span <= grid.columns; span += 1) {
    if (width <= cellWidthMm(grid, span) - grid.gutterMm) return span;
  }
  return null;
}

/** The bars on each line where none has more than `most`: as equal as they go. */
function evenBars(count: number, most: number): number {
  return Math.ceil(count / Math.ceil(count / most));
}

/** The most bars on one line: one a column, or in a single column as many as have room, dense bars beside sparse ones. */
function barsPerLine(context: SheetContext, grid: Grid, prepared: PreparedExercise): number {
  if (grid.columns > 1) return grid.columns;
  const count = prepared.bars.length;
  const roomMm = (grid.columnMm - grid.gutterMm) / COMFORT_IN_LINE;
  const fits = (bars: number) =>
    Array.from({ length: Math.ceil(count / bars) }, (_, line) => line * bars).every(
      (from) => lineWidthMm(context, prepared, from, Math.min(count, from + bars)) <= roomMm,
    );
  for (let most = count; most > 1; most -= 1) if (fits(evenBars(count, most))) return most;
  return 1;
}

function linesOf(context: SheetContext, grid: Grid, prepared: PreparedExercise): readonly GridLine[] {
  const most = barsPerLine(context, grid, prepared);
  const count = prepared.bars.length;
  const even = evenBars(count, most);
  const lines: GridLine[] = [];
  for (let from = 0; from < count; ) {
    let to = Math.min(count, from + even);
    let span = spanFor(context, grid, prepared, from, to);
    while (span === null && to > from + 1) {
      to -= 1;
      span = spanFor(context, grid, prepared, from, to);
    }
    const room = grid.columnMm * grid.columns + (grid.columns - 1) * COLUMN_GAP_MM - grid.gutterMm;
    const shrink = span === null ? room / lineWidthMm(context, prepared, from, to) : 1;
    lines.push({ prepared, from, to, span: span ?? grid.columns, shrink, widerMm: 0 });
    from = to;
  }
  return inOneWidth(lines);
}

/** Lines of an exercise with as many bars each are as wide as the widest of them, since they stand under each other. */
function inOneWidth(lines: readonly GridLine[]): readonly GridLine[] {
  const most = new Map<number, number>();
  for (const { from, to, span } of lines) most.set(to - from, Math.max(span, most.get(to - from) ?? 0));
  return lines.map((line) => ({ ...line, span: most.get(line.to - line.from) ?? line.span }));
}

/** Whether an exercise is the first of its page where a page has a chosen number of them. */
function opensPage({ numbers, settings }: SheetContext, { prepared, from }: GridLine): boolean {
  const { perPage } = settings;
  return perPage !== null && from === 0 && numbers.indexOf(prepared.exercise.number) % perPage === 0;
}

/** Whether a line begins an exercise whose name is a heading, and headings begin rows. */
function opensBlock({ blocksApart, lesson }: SheetContext, { prepared, from }: GridLine): boolean {
  return blocksApart && from === 0 && headingsOf(lesson.exercises).has(prepared.exercise.number);
}

/** Lines that stand beside each other; an exercise of several lines keeps each row to itself. */
function rowsOf(
  context: SheetContext,
  grid: Grid,
  lines: readonly GridLine[],
): readonly (readonly GridLine[])[] {
  const rows: GridLine[][] = [];
  let used = grid.columns;
  for (const line of lines) {
    const opens = opensPage(context, line) || opensBlock(context, line);
    if (used + line.span > grid.columns || opens) {
      rows.push([]);
      used = 0;
    }
    (rows.at(-1) as GridLine[]).push(line);
    used += line.from > 0 || line.to < line.prepared.bars.length ? grid.columns : line.span;
  }
  return rows;
}

/** Where a line hangs in its row, and how much higher than it asks for its name stands. */
interface Hanging {
  readonly x: number;
  readonly y: number;
  readonly liftMm: number;
}

function groupOf(
  { words }: SheetContext,
  line: GridLine,
  laid: ExerciseLine,
  { x, y, liftMm }: Hanging,
): GroupItem {
  const { exercise } = line.prepared;
  const id =
    line.from === 0 ? `exercise-${exercise.number}` : `exercise-${exercise.number}-bar-${line.from + 1}`;
  const title = exerciseTitle(words, exercise);
  const label = line.from === 0 ? title : words.fromBar({ exercise: title, bar: line.from + 1 });
  return { kind: 'group', x, y, id, label, items: [...allMoved(laid.captions, 0, -liftMm), ...laid.items] };
}

/** How wide a line may be: one bar over several columns, or over a whole row, is not drawn out to fill them. */
function mostWidthMm({ gutterMm, columns, widestMm, shrink }: Grid, { from, to, span }: GridLine): number {
  if (to - from > 1 || (span === 1 && columns > 1)) return Number.POSITIVE_INFINITY;
  return gutterMm + MOST_STRETCH * widestMm * shrink;
}

/** A line of a row, laid out, and where it stands. */
interface LaidLine {
  readonly line: GridLine;
  readonly block: ExerciseLine;
  readonly x: number;
}

/** What stands right of a line whose cell ends at some x, or nothing where there is nothing or a name. */
function besideOf(right: readonly LaidLine[], endMm: number): { readonly beside?: Beside } {
  const last = right.at(-1);
  const isNamed = right.some(({ line }) => line.from === 0 && line.prepared.exercise.name !== null);
  if (!last || isNamed) return {};
  const widthMm = last.x + last.block.widthMm - endMm;
  return { beside: { widthMm, overStaffMm: Math.max(...right.map(({ block }) => block.staffMm)) } };
}

/** Lays out a line that stands in a column; a name may reach over what is laid out right of it already. */
function laidLine(
  context: SheetContext,
  grid: Grid,
  line: GridLine,
  { x, right }: { readonly x: number; readonly right: readonly LaidLine[] },
): LaidLine {
  const shrunk = line.shrink < 1 ? { ...context, staffSpaceMm: context.staffSpaceMm * line.shrink } : context;
  const cellMm = line.widerMm + Math.min(cellWidthMm(grid, line.span), mostWidthMm(grid, line));
  const block = layOutLine(shrunk, line.prepared, {
    from: line.from,
    to: line.to,
    cellMm,
    gutterMm: grid.gutterMm,
    ...besideOf(right, x + cellMm),
  });
  return { line, block, x };
}

/** From the start of a line to that of the next one in its row. */
function stepMm(grid: Grid, { span, widerMm }: GridLine): number {
  return span * (grid.columnMm + COLUMN_GAP_MM) + widerMm;
}

/** The lines of a row, laid out from the right to the left. */
function laidRow(context: SheetContext, grid: Grid, row: readonly GridLine[]): readonly LaidLine[] {
  let right: readonly LaidLine[] = [];
  let x = row.reduce((sum, line) => sum + stepMm(grid, line), 0);
  for (const line of row.toReversed()) {
    x -= stepMm(grid, line);
    right = [laidLine(context, grid, line, { x, right }), ...right];
  }
  return right;
}

function layOutRow(context: SheetContext, grid: Grid, row: readonly GridLine[]): FlowBlock {
  const laid = laidRow(context, grid, row);
  const staffMm = Math.max(...laid.map(({ block }) => block.staffMm));
  const hung = laid.map(({ line, block, x }) => ({ line, block, x, y: staffMm - block.staffMm }));
  const levelMm = Math.min(...hung.flatMap(({ block, y }) => (block.captions.length > 0 ? [y] : [])));
  const liftMm = (y: number) => (y - levelMm <= MOST_LIFT_MM ? y - levelMm : 0);
  return {
    gapMm: ROW_GAP_MM,
    heightMm: Math.max(...hung.map(({ block, y }) => y + block.heightMm)),
    items: hung.map(({ line, block, x, y }) => groupOf(context, line, block, { x, y, liftMm: liftMm(y) })),
    places: hung.map(({ block, x, y }) => movedLine(block.place, x, y)),
  };
}

/** The first line with clef and meter before it: it takes room that others of its row can spare, or a column more. */
function withSignature(
  context: SheetContext,
  grid: Grid,
  [first, ...rest]: readonly [GridLine, ...GridLine[]],
): readonly GridLine[] {
  const opening = { ...first, prepared: { ...first.prepared, signature: true } };
  const widthMm = (line: GridLine) => lineWidthMm(context, line.prepared, line.from, line.to) * line.shrink;
  const roomMm = (line: GridLine) => cellWidthMm(grid, line.span) - grid.gutterMm;
  const askedMm = Math.max(0, widthMm(opening) - roomMm(opening));
  const [row = []] = rowsOf(context, grid, [opening, ...rest]);
  const others = row.slice(1);
  const free = grid.columns - row.reduce((sum, { span }) => sum + span, 0);
  const takenMm = Math.max(0, askedMm - free * (grid.columnMm + COLUMN_GAP_MM));
  const spare = others.map((line) => Math.max(0, roomMm(line) - widthMm(line)));
  const spareMm = spare.reduce((sum, each) => sum + each, 0);
  if (takenMm > spareMm) return rowToItself(grid, opening, roomMm(opening) / widthMm(opening), rest);
  const narrower = others.map((line, index) => {
    return { ...line, widerMm: takenMm === 0 ? 0 : (-takenMm * (spare[index] as number)) / spareMm };
  });
  return [{ ...opening, widerMm: askedMm }, ...narrower, ...rest.slice(others.length)];
}

/** An opening line that its columns do not hold: in one more, or smaller where there is none. */
function rowToItself(
  grid: Grid,
  opening: GridLine,
  fits: number,
  rest: readonly GridLine[],
): readonly GridLine[] {
  const { span, shrink } = opening;
  if (span < grid.columns) return [{ ...opening, span: span + 1 }, ...rest];
  return [{ ...opening, shrink: shrink * fits }, ...rest];
}

/** The lines of all exercises; clef and meter stand before the first where no groove is printed that has them. */
function allLines(
  context: SheetContext,
  grid: Grid,
  prepared: readonly PreparedExercise[],
): readonly GridLine[] {
  const [first, ...rest] = prepared.flatMap((each) => linesOf(context, grid, each));
  if (!first) return [];
  return context.lesson.groove.length === 0
    ? withSignature(context, grid, [first, ...rest])
    : [first, ...rest];
}

/** All exercises of the section as rows. */
export function layOutExercises(context: SheetContext): readonly FlowBlock[] {
  if (context.lesson.exercises.length === 0) return [];
  const prepared = context.lesson.exercises.map((exercise) => prepareExercise(context, exercise));
  const grid = chooseGrid(context, prepared);
  const sized = { ...context, staffSpaceMm: context.staffSpaceMm * grid.shrink };
  const lines = allLines(sized, grid, prepared);
  return rowsOf(sized, grid, lines).map((row, index) => {
    const [first] = row;
    const goesOn = context.blocksApart && first !== undefined && !opensBlock(context, first);
    const block = { ...layOutRow(sized, grid, row), goesOn };
    return index === 0 ? { ...block, gapMm: 6 } : block;
  });
}
