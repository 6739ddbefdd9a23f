/** An exercise made ready for printing: its notation, its counts, and how wide its lines must be. */
import {
  add,
  beatLength,
  beatStarts,
  type Exercise,
  type Fraction,
  fraction,
  isClapped,
  isLooped,
  isStruck,
  multiply,
  type NotatedBar,
  type Subdivision,
} from '@shedbook/core';
import type { TextStyle } from '../text/wrap.ts';
import type { SlotText } from '../tile/spacing.ts';
import { leastTileWidthMm, type TileRequest } from '../tile/tile.ts';
import type { SheetContext } from './context.ts';
import { countUnder, describeBars, describeRepeats } from './describe.ts';
import { describeHow } from './how-signs.ts';
import {
  barCount,
  fitsOneLine,
  notatedBars,
  ownParts,
  type PrintedPart,
  partsOfBar,
  wholeParts,
} from './parts.ts';
import { signsOf } from './repeats.ts';
import { style } from './setting.ts';
import { exerciseTitle } from './sheet-words.ts';

/** Size of counts in staff spaces, so that they grow with the notes. */
export const COUNT_SPACES = 1.75;

/** The most bars that one exercise is printed with. */
const MOST_BARS = 64;

/** A count under the notes. */
export interface Count {
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
  /** Whether clef and meter stand before its first bar: no where left out. */
  readonly signature?: boolean;
}

/** How a count is set: bold where something is struck. */
export function countStyle(context: SheetContext, struck: boolean): TextStyle {
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
        cell.marks.some((mark, index) => isStruck(mark) && index * slots === slot * cell.marks.length),
      );
    return Array.from({ length: slots }, (__, slot) => ({
      start: add(starts[beat] ?? fraction(0), multiply(beatLength(meter, beat), fraction(slot, slots))),
      text: countUnder(context.words, beat, slot, slots),
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
  // Who claps counts aloud.
  const isCounted = settings.counts || isClapped(exercise);
  return {
    exercise,
    parts,
    staff: !full && fitsOneLine(own) ? 'line' : 'full',
    bars: notatedBars(lesson, parts, count),
    counts: isCounted ? Array.from({ length: count }, (_, bar) => countsOfBar(context, own, bar)) : [],
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

/** Whether it is played again and again, and no repeat of its own says how. */
function goesRound(exercise: Exercise): boolean {
  return !exercise.repeats && isLooped(barCount(ownParts(exercise), MOST_BARS));
}

/** The music of the bars `from` (from 0) up to `to`, without a width and without words. */
export function lineMusic(
  context: SheetContext,
  prepared: PreparedExercise,
  from: number,
  to: number,
): TileRequest {
  const { exercise } = prepared;
  const texts = prepared.counts.slice(from, to).map((counts) => slotTexts(context, counts));
  return {
    id: from === 0 ? `e${exercise.number}` : `e${exercise.number}-${from + 1}`,
    bars: prepared.bars.slice(from, to),
    firstBar: from + 1,
    staff: prepared.staff,
    staffSpaceMm: context.staffSpaceMm,
    widthMm: null,
    barLines: to === prepared.bars.length && goesRound(exercise) ? 'repeat' : 'single',
    ...(from === 0 && prepared.signature ? { signature: true } : {}),
    ...signsOf(prepared, from, to),
    ...(texts.length > 0 ? { texts } : {}),
  };
}

/** The tile of the bars `from` (from 0) up to `to`, without a width. */
export function lineRequest(
  context: SheetContext,
  prepared: PreparedExercise,
  from: number,
  to: number,
): TileRequest {
  const { exercise, parts } = prepared;
  const own = exercise.parts.map((part) => part.voice);
  return {
    ...lineMusic(context, prepared, from, to),
    title: exerciseTitle(context.words, exercise),
    description:
      describeBars(parts, context.words, from, to) +
      describeRepeats(exercise, context.words, from) +
      (from === 0 ? describeHow(exercise.how, own, context.words) : '') +
      (from === 0 && exercise.example ? ` ${context.words.exampleSaid}` : ''),
  };
}

/** Least width of the bars `from` up to `to`. */
export function lineWidthMm(
  context: SheetContext,
  prepared: PreparedExercise,
  from: number,
  to: number,
): number {
  return leastTileWidthMm(lineMusic(context, prepared, from, to));
}

/** Where a line of an exercise stands: its bars and its share of the grid. */
export interface LineSlot {
  /** Index of its first bar in the exercise. */
  readonly from: number;
  /** Index after its last bar. */
  readonly to: number;
  readonly cellMm: number;
  readonly gutterMm: number;
  /** What stands right of it in its row, where nothing there has a name. */
  readonly beside?: Beside;
}

/** Lines right of another one in a row, without names over them. */
export interface Beside {
  /** Room that they take, with the gap before each. */
  readonly widthMm: number;
  /** How far what they have reaches over the top staff line. */
  readonly overStaffMm: number;
}
