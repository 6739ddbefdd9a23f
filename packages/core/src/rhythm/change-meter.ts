/**
 * A pattern in another meter: what has a place there stays, what has none is told.
 *
 * Conventions: bars, beats and slots count from 0. Beat by beat where both meters have as many beats, or where one of
 * them divides its beats in three and the other in two (4/4 and 12/8); else by time, so that 3/4 becomes 6/8 with
 * every stroke where it sounds.
 * Source: common practice: an off-beat eighth stands on the last of three where a beat divides in three.
 */
import { type Cell, cell, isStruck, type Mark, SUBDIVISIONS, silentLike } from './cell.ts';
import {
  add,
  compare,
  divide,
  equals,
  type Fraction,
  fraction,
  multiply,
  subtract,
  toNumber,
} from './fraction.ts';
import { commonGrid } from './grid.ts';
import { beatStarts, type Meter, tempoBeat } from './meter.ts';
import { type Pattern, strokesOfBar } from './pattern.ts';

/** From one meter to another. */
export interface MeterChange {
  readonly from: Meter;
  readonly to: Meter;
}

/** A pattern after a change, and what became of its strokes. */
export interface ChangedPattern {
  readonly pattern: Pattern;
  /** For each stroke of the new pattern, in order, which stroke it was, from 0. */
  readonly strokes: readonly number[];
  /** Strokes that have no place any more. */
  readonly lost: number;
  /** Strokes that stand nearby, since no division of the new beats has their place. */
  readonly moved: number;
}

/** A slot of a pattern that has not been given a beat yet. */
interface Loose {
  /** From the start of the beat, as a part of the beat. */
  readonly at: Fraction;
  readonly mark: Mark;
  /** Number of the stroke, or null for a silent slot. */
  readonly stroke: number | null;
}

/** How much longer a beat is that divides in three than one that divides in two: a dotted quarter and a quarter. */
const DOTTED: readonly Fraction[] = [fraction(3, 2), fraction(2, 3)];

/** Whether a change goes beat by beat. */
export function isBeatByBeat({ from, to }: MeterChange): boolean {
  if (from.beats.length === to.beats.length) return true;
  if (from.compound === to.compound || equals(from.bar, to.bar)) return false;
  const ratio = divide(tempoBeat(to), tempoBeat(from));
  return DOTTED.some((each) => equals(each, ratio));
}

/** Where a beat of the old meter begins in the new one, from 0; null where the bar is over by then. */
export function beatAfter(change: MeterChange, beat: number): number | null {
  const { from, to } = change;
  if (isBeatByBeat(change)) return beat < to.beats.length ? beat : null;
  const at = beatStarts(from)[beat];
  if (!at || compare(at, to.bar) >= 0) return null;
  return beatStarts(to).findLastIndex((start) => compare(start, at) <= 0);
}

/** Slots of a beat in two or four, where the beat divides in three: long and short, as in a shuffle. */
const IN_THREE: Readonly<Record<number, { readonly slots: number; readonly places: readonly number[] }>> = {
  2: { slots: 3, places: [0, 2] },
  4: { slots: 6, places: [0, 2, 3, 5] },
};

/**
 * A cell for a beat that divides in three.
 * @example cellInThree(cell('xx')).text // 'x.x'
 */
export function cellInThree(of: Cell): Cell {
  const plan = IN_THREE[of.marks.length];
  if (!plan) return of;
  const marks = Array.from({ length: plan.slots }, (_, slot) => {
    const next = of.marks[plan.places.findIndex((place) => place > slot)];
    return of.marks[plan.places.indexOf(slot)] ?? (next === '~' ? next : '.');
  });
  return cell(marks.join(''));
}

/**
 * A cell in three as it is written in even eighths or sixteenths, or null where it has a stroke between them.
 * @example cellInTwo(cell('x.x'))?.text // 'xx'
 */
export function cellInTwo(of: Cell): Cell | null {
  const entry = Object.entries(IN_THREE).find(([, { slots }]) => slots === of.marks.length);
  if (!entry) return of;
  const { places } = entry[1];
  if (of.marks.some((mark, slot) => isStruck(mark) && !places.includes(slot))) return null;
  return cell(places.map((place) => of.marks[place] ?? '.').join(''));
}

function holds(slots: number, at: Fraction): boolean {
  return Number.isInteger(toNumber(multiply(at, fraction(slots))));
}

/** The division that suits what falls into a beat: all its slots, else all its strokes, else most of them. */
function divisionFor(loose: readonly Loose[]): number {
  const struck = loose.filter(({ stroke }) => stroke !== null);
  for (const places of [loose, struck]) {
    const grid = commonGrid(places.map(({ at }) => at.den));
    if ((SUBDIVISIONS as readonly number[]).includes(grid)) return grid;
  }
  const held = (slots: number) => struck.filter(({ at }) => holds(slots, at)).length;
  return SUBDIVISIONS.reduce((best, slots) => (held(slots) >= held(best) ? slots : best), 1 as number);
}

interface Gathered {
  readonly cell: Cell;
  readonly strokes: readonly number[];
  readonly moved: number;
}

/** The cell of a beat with what falls into it; a stroke without a slot of its own takes the nearest free one before. */
function gather(loose: readonly Loose[]): Gathered {
  const slots = divisionFor(loose);
  const marks: Mark[] = Array.from({ length: slots }, () => '.');
  const strokes: (number | null)[] = Array.from({ length: slots }, () => null);
  let moved = 0;
  let before = -1;
  for (const { at, mark, stroke } of loose) {
    const place = Math.floor(toNumber(multiply(at, fraction(slots))) + 1e-9);
    if (stroke === null) {
      // What is held goes on from right after what it was held from, and ends at the next silence.
      const from = mark === '~' ? before + 1 : place;
      for (let slot = Math.max(from, 0); slot < slots; slot += 1)
        if (strokes[slot] === null) marks[slot] = mark;
      before = place;
      continue;
    }
    before = place;
    if (strokes[place] !== null) continue;
    marks.fill('.', place);
    marks[place] = mark;
    strokes[place] = stroke;
    if (!holds(slots, at)) moved += 1;
  }
  return { cell: cell(marks.join('')), strokes: strokes.filter((each) => each !== null), moved };
}

/** Every slot of a bar by time: which new beat it falls into, and where in that. */
function byTime(
  bar: readonly Cell[],
  first: number,
  { from, to }: MeterChange,
): readonly (readonly Loose[])[] {
  const beats: Loose[][] = to.beats.map(() => []);
  const [before, after] = [beatStarts(from), beatStarts(to)];
  let next = first;
  bar.forEach(({ marks }, beat) => {
    marks.forEach((mark, slot) => {
      const stroke = isStruck(mark) ? next++ : null;
      const length = from.beats[beat] as Fraction;
      const inBeat = multiply(length, fraction(slot, marks.length));
      const at = add(before[beat] as Fraction, inBeat);
      if (compare(at, to.bar) >= 0) return;
      const home = after.findLastIndex((start) => compare(start, at) <= 0);
      const within = divide(subtract(at, after[home] as Fraction), to.beats[home] as Fraction);
      beats[home]?.push({ at: within, mark, stroke });
    });
  });
  return beats.map((loose, beat) => {
    const isHeldInto = beats[beat - 1]?.at(-1)?.mark === '~' && loose[0]?.at.num !== 0;
    return isHeldInto ? [{ at: fraction(0), mark: '~', stroke: null }, ...loose] : loose;
  });
}

/** A bar beat by beat: those that there are, divided as the new beats divide. */
function byBeat(bar: readonly Cell[], first: number, { to }: MeterChange): readonly Gathered[] {
  let next = first;
  return bar.slice(0, to.beats.length).map((each) => {
    const kept = to.compound ? cellInThree(each) : each;
    const strokes = kept.marks.filter(isStruck).map(() => next++);
    return { cell: kept, strokes, moved: 0 };
  });
}

/** A bar after a change, without the beats that begin when the old one is over. */
function changeBar(bar: readonly Cell[], first: number, change: MeterChange): readonly Gathered[] {
  if (isBeatByBeat(change)) return byBeat(bar, first, change);
  const { from, to } = change;
  const isThere = (beat: number) => compare(beatStarts(to)[beat] as Fraction, from.bar) < 0;
  return byTime(bar, first, change)
    .filter((_, beat) => isThere(beat))
    .map(gather);
}

/**
 * A pattern in another meter.
 * @param goesOn what new beats at the end of a bar have: `silent`, or `repeats` what stood two beats before
 */
export function changeMeter(
  pattern: Pattern,
  change: MeterChange,
  goesOn: 'silent' | 'repeats',
): ChangedPattern {
  const strokes: number[] = [];
  let moved = 0;
  const bars = pattern.bars.map((bar, index) => {
    const beats = changeBar(bar, strokesOfBar(pattern, index).from, change);
    strokes.push(...beats.flatMap((each) => each.strokes));
    moved += beats.reduce((sum, each) => sum + each.moved, 0);
    const cells = beats.map((each) => each.cell);
    while (cells.length < change.to.beats.length) {
      const before = cells.at(-2) ?? cells.at(-1);
      cells.push(goesOn === 'repeats' && before ? before : silentLike(cells.at(-1)));
    }
    return cells;
  });
  const { to: before } = strokesOfBar(pattern, pattern.bars.length - 1);
  return { pattern: { bars }, strokes, lost: before - strokes.length, moved };
}
