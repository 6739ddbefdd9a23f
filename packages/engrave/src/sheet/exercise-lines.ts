/**
 * An exercise as lines of a grid: its number, name and tick boxes, the notes, and under them hands, counts and
 * remarks.
 */
import {
  add,
  beatLength,
  beatStarts,
  countSyllable,
  type Exercise,
  type Fraction,
  fraction,
  multiply,
  type NotatedBar,
  type Subdivision,
} from '@shedbook/core';
import { CAP_HEIGHT } from '../text/fonts.ts';
import type { TextStyle } from '../text/wrap.ts';
import { type SlotText } from '../tile/spacing.ts';
import { leastTileWidthMm, type Tile, type TileRequest } from '../tile/tile.ts';
import type { SheetContext } from './context.ts';
import { describeBars } from './describe.ts';
import { ACCENT, allMoved, boxOf, type Item, PENCIL } from './item.ts';
import {
  barCount,
  fitsOneLine,
  notatedBars,
  ownParts,
  type PrintedPart,
  partsOfBar,
  wholeParts,
} from './parts.ts';
import { type ExercisePlace, slotPlaces } from './places.ts';
import { setColumn, setLine, style } from './setting.ts';
import { printedTempi, thinned } from './tempi.ts';

/** Sizes in staff spaces, so that they grow with the notes. */
const COUNT_SPACES = 1.75;
const STICKING_SPACES = 1.8;
const NAME_MM = 4.1;
const NOTES_MM = 3.7;
const NUMBER_MM = 6.6;

/** Between the number and the notes. */
export const GUTTER_GAP_MM = 2.4;

/** The most bars that one exercise is printed with. */
const MOST_BARS = 64;

/** A count under the notes. */
interface Count {
  readonly start: Fraction;
  readonly text: string;
  readonly struck: boolean;
}

/** Everything about an exercise that does not depend on its place in the grid. */
export interface PreparedExercise {
  readonly exercise: Exercise;
  readonly parts: readonly PrintedPart[];
  readonly staff: 'full' | 'line';
  readonly bars: readonly NotatedBar[];
  /** By bar; empty where counts are not wanted. */
  readonly counts: readonly (readonly Count[])[];
}

function countStyle(context: SheetContext, struck: boolean): TextStyle {
  return style(struck ? 'bold' : 'regular', COUNT_SPACES * context.staffSpaceMm);
}

/** Counts of one bar (from 0): every slot of the finest subdivision that the exercise has in each beat. */
function countsOfBar(context: SheetContext, own: readonly PrintedPart[], bar: number): readonly Count[] {
  const { meter } = context.lesson;
  const parts = partsOfBar(own, bar);
  const starts = beatStarts(meter);
  return meter.beats.flatMap((_, beat) => {
    const cells = parts.flatMap((part) => part.cells[beat] ?? []);
    const slots = Math.max(1, ...cells.map((cell) => cell.marks.length)) as Subdivision;
    const struckAt = (slot: number) =>
      cells.some((cell) =>
        cell.marks.some((mark, index) => mark !== '.' && index * slots === slot * cell.marks.length),
      );
    return Array.from({ length: slots }, (__, slot) => ({
      start: add(starts[beat] ?? fraction(0), multiply(beatLength(meter, beat), fraction(slot, slots))),
      text: countSyllable(beat, slot, slots),
      struck: struckAt(slot),
    }));
  });
}

/** Reads an exercise for printing. */
export function prepareExercise(context: SheetContext, exercise: Exercise): PreparedExercise {
  const { lesson, settings } = context;
  const own = ownParts(exercise);
  const full = settings.staff === 'full';
  const parts = full ? wholeParts(lesson, exercise) : own;
  const count = Math.min(MOST_BARS, barCount(own, MOST_BARS));
  return {
    exercise,
    parts,
    staff: !full && fitsOneLine(own) ? 'line' : 'full',
    bars: notatedBars(lesson, parts, count),
    counts: settings.counts ? Array.from({ length: count }, (_, bar) => countsOfBar(context, own, bar)) : [],
  };
}

function slotTexts(context: SheetContext, counts: readonly Count[]): readonly SlotText[] {
  return counts.map((count) => {
    const { weight, sizeMm } = countStyle(context, count.struck);
    return {
      start: count.start,
      width: context.fonts.widthMm(count.text, weight, sizeMm) / context.staffSpaceMm,
    };
  });
}

/** The tile of the bars `from` (from 0) up to `to`, without a width. */
export function lineRequest(
  context: SheetContext,
  prepared: PreparedExercise,
  from: number,
  to: number,
): TileRequest {
  const { exercise, parts } = prepared;
  const name = exercise.name ? `, ${exercise.name}` : '';
  const texts = prepared.counts.slice(from, to).map((counts) => slotTexts(context, counts));
  return {
    id: from === 0 ? `e${exercise.number}` : `e${exercise.number}-${from + 1}`,
    bars: prepared.bars.slice(from, to),
    firstBar: from + 1,
    staff: prepared.staff,
    staffSpaceMm: context.staffSpaceMm,
    widthMm: null,
    title: `Exercise ${exercise.number}${name}`,
    description: describeBars(parts, from, to),
    ...(texts.length > 0 ? { texts } : {}),
  };
}

/** Least width of the bars `from` up to `to`. */
export function lineWidthMm(
  context: SheetContext,
  prepared: PreparedExercise,
  from: number,
  to: number,
): number {
  return leastTileWidthMm(lineRequest(context, prepared, from, to));
}

/** Where a line of an exercise stands: its bars and its share of the grid. */
export interface LineSlot {
  readonly from: number;
  readonly to: number;
  readonly cellMm: number;
  readonly gutterMm: number;
}

/** A laid out line of an exercise. */
export interface ExerciseLine {
  readonly widthMm: number;
  readonly heightMm: number;
  /** From the top to the top staff line: lines beside each other are hung from it. */
  readonly staffMm: number;
  readonly items: readonly Item[];
  readonly place: ExercisePlace;
}

/** Boxes with the tempi to tick off, set to the right; and the width they take. */
function tickBoxes(
  context: SheetContext,
  roomMm: number,
): { readonly items: readonly Item[]; readonly widthMm: number } {
  const { fonts, lesson } = context;
  const text = style('regular', 2.9);
  const height = 4.3;
  const steps = printedTempi(lesson).steps.map((bpm) => `${Math.round(bpm * 100) / 100}`);
  const width = Math.max(...steps.map((step) => fonts.widthMm(step, text.weight, text.sizeMm))) + 2;
  const most = Math.floor((roomMm + 0.9) / (width + 0.9));
  const shown = thinned(
    steps.map((_, index) => index),
    most,
  ).map((index) => steps[index] as string);
  const widthMm = shown.length * (width + 0.9) - 0.9;
  const items = shown.flatMap((step, index): readonly Item[] => {
    const x = index * (width + 0.9);
    const label = setLine(fonts, step, text, {
      x: x + width / 2,
      y: (height + CAP_HEIGHT * text.sizeMm) / 2,
      align: 'middle',
      colour: PENCIL,
    });
    return [
      {
        kind: 'rect',
        x: x + 0.1,
        y: 0.1,
        width: width - 0.2,
        height: height - 0.2,
        strokeMm: 0.2,
        colour: '#000000',
      },
      label,
    ];
  });
  return { items, widthMm: Math.max(0, widthMm) };
}

/** Name and tick boxes over the notes. */
function captions(
  context: SheetContext,
  prepared: PreparedExercise,
  line: LineSlot,
): { readonly items: readonly Item[]; readonly heightMm: number } {
  if (line.from > 0) return { items: [], heightMm: 0 };
  const { exercise } = prepared;
  const widthMm = line.cellMm - line.gutterMm;
  const boxes = context.settings.tickBoxes
    ? tickBoxes(context, exercise.name ? widthMm * 0.6 : widthMm)
    : { items: [], widthMm: 0 };
  const nameMm = widthMm - (boxes.widthMm > 0 ? boxes.widthMm + 3 : 0);
  const name = setColumn(context.fonts, exercise.name ?? '', style('bold', NAME_MM), nameMm, { maxLines: 2 });
  const heightMm = Math.max(name.heightMm, boxes.items.length > 0 ? 4.4 : 0);
  const items = [
    ...allMoved(name.items, line.gutterMm, 0),
    ...allMoved(boxes.items, line.cellMm - boxes.widthMm, 0),
  ];
  return { items, heightMm };
}

/** Hands under the notes, on a baseline y = 0; empty where none are written or wanted. */
function stickings(context: SheetContext, prepared: PreparedExercise, tile: Tile): readonly Item[] {
  if (!context.settings.stickings || prepared.exercise.sticking === null) return [];
  const first = tile.heads[0];
  if (!first) return [];
  const size = style('bold', STICKING_SPACES * context.staffSpaceMm);
  const heads = new Map(tile.heads.map((head) => [head.id, head.xMm]));
  return prepared.bars.flatMap((bar, index) =>
    bar.layers.flatMap((layer) =>
      layer.groups.flatMap((group) =>
        group.events.flatMap((event) =>
          event.heads.flatMap((head) => {
            const id = [...heads.keys()].find((key) =>
              key.endsWith(`-b${index + 1}-${event.start.num}-${event.start.den}-${head.voice}`),
            );
            if (head.sticking === null || id === undefined) return [];
            return [
              setLine(context.fonts, head.sticking, size, {
                x: heads.get(id) as number,
                y: 0,
                align: 'middle',
              }),
            ];
          }),
        ),
      ),
    ),
  );
}

/** Counts on a baseline y = 0. */
function countItems(
  context: SheetContext,
  prepared: PreparedExercise,
  tile: Tile,
  line: LineSlot,
): readonly Item[] {
  return prepared.counts.slice(line.from, line.to).flatMap((counts, index) =>
    counts.map((count) => {
      const x = tile.xAt(line.from + index + 1, count.start);
      return setLine(context.fonts, count.text, countStyle(context, count.struck), {
        x,
        y: 0,
        align: 'middle',
        ...(count.struck ? {} : { colour: PENCIL }),
      });
    }),
  );
}

/** Texts under a tile whose ink ends at y = 0. */
function underTile(
  context: SheetContext,
  prepared: PreparedExercise,
  tile: Tile,
  line: LineSlot,
): { readonly items: readonly Item[]; readonly heightMm: number } {
  const items: Item[] = [];
  let y = 0;
  for (const [row, spaces] of [
    [stickings(context, prepared, tile), STICKING_SPACES],
    [countItems(context, prepared, tile, line), COUNT_SPACES],
  ] as const) {
    if (row.length === 0) continue;
    y += (spaces * CAP_HEIGHT + 0.55) * context.staffSpaceMm;
    items.push(...allMoved(row, 0, y));
  }
  const last = items.map((item) => boxOf(item)).map((box) => box.y + box.height);
  return { items, heightMm: Math.max(0, ...last) };
}

/** The most of a page that one exercise's remarks may take. */
const NOTES_SHARE = 0.5;

function remarks(context: SheetContext, prepared: PreparedExercise, line: LineSlot) {
  const { exercise } = prepared;
  if (!exercise.notes || line.to < prepared.bars.length) return { items: [], heightMm: 0 };
  const maxLines = Math.max(1, Math.floor((context.contentHeightMm * NOTES_SHARE) / (NOTES_MM * 1.28)));
  return setColumn(context.fonts, exercise.notes, style('italic', NOTES_MM), line.cellMm - line.gutterMm, {
    maxLines,
  });
}

function numberItem(
  context: SheetContext,
  prepared: PreparedExercise,
  line: LineSlot,
  y: number,
): readonly Item[] {
  if (line.from > 0) return [];
  const x = line.gutterMm - GUTTER_GAP_MM;
  return [
    setLine(context.fonts, `${prepared.exercise.number}`, style('bold', NUMBER_MM), {
      x,
      y: y + (CAP_HEIGHT * NUMBER_MM) / 2,
      align: 'right',
      colour: ACCENT,
    }),
  ];
}

/** Lays out one line of an exercise. */
export function layOutLine(context: SheetContext, prepared: PreparedExercise, line: LineSlot): ExerciseLine {
  const { lesson, engraver } = context;
  const tile = engraver.engraveTile({
    ...lineRequest(context, prepared, line.from, line.to),
    widthMm: line.cellMm - line.gutterMm,
  });
  const above = captions(context, prepared, line);
  const top = above.heightMm + (above.heightMm > 0 ? 0.8 : 0);
  const under = underTile(context, prepared, tile, line);
  const notes = remarks(context, prepared, line);
  const bottom = top + tile.heightMm + under.heightMm;
  const middle = top + (tile.staffTopMm + tile.staffBottomMm) / 2;
  const items: readonly Item[] = [
    ...above.items,
    ...numberItem(context, prepared, line, middle),
    { kind: 'tile', x: line.gutterMm, y: top, tile },
    ...allMoved(under.items, line.gutterMm, top + tile.heightMm),
    ...allMoved(notes.items, line.gutterMm, bottom + 0.6),
  ];
  const heightMm = bottom + (notes.heightMm > 0 ? notes.heightMm + 0.6 : 0);
  const slots = slotPlaces(lesson, prepared.parts, tile, line.from, line.to).map((slot) => ({
    ...slot,
    xMm: slot.xMm + line.gutterMm,
    yMm: slot.yMm + top,
  }));
  const place = { exercise: prepared.exercise.number, xMm: 0, yMm: 0, widthMm: line.cellMm, heightMm, slots };
  return { widthMm: line.cellMm, heightMm, staffMm: top + tile.staffTopMm, items, place };
}
