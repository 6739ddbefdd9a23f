/**
 * Placed strokes to patterns: one part a voice, every beat in the coarsest subdivision that has all its strokes.
 */

import { groupBy } from '../group-by.ts';
import { VOICES, type Voice } from '../kit/voice.ts';
import type { ExercisePart } from '../lesson/lesson.ts';
import { type Cell, cell, type Mark, SUBDIVISIONS, type Subdivision } from '../rhythm/cell.ts';
import { add, divide, type Fraction, fraction, multiply, subtract, toNumber } from '../rhythm/fraction.ts';
import { released } from '../rhythm/held.ts';
import { beatLength, beatStarts, type Meter } from '../rhythm/meter.ts';
import { groupByHomeVoice } from './home-voice.ts';
import { markOf } from './mark-of.ts';
import type { PlacedStroke } from './placed.ts';

/** The parts found, and the strokes that no part could take. */
export interface Assembled<T extends PlacedStroke> {
  /** In the order of the voices; all with the same number of bars. */
  readonly parts: readonly ExercisePart[];
  /** Strokes that no subdivision of a beat has, or that fall on another stroke of their voice. */
  readonly misfits: readonly T[];
}

interface InBeat<T> {
  readonly stroke: T;
  /** Place in the beat, as a fraction of it. */
  readonly phase: Fraction;
}

function fits(phase: Fraction, slots: Subdivision): boolean {
  return slots % phase.den === 0;
}

/** The coarsest subdivision with the most of the strokes. */
function subdivisionFor(phases: readonly Fraction[]): Subdivision {
  const fitting = (slots: Subdivision) => phases.filter((phase) => fits(phase, slots)).length;
  return SUBDIVISIONS.reduce((best, slots) => (fitting(slots) > fitting(best) ? slots : best));
}

function assembleBeat<T extends PlacedStroke>(
  home: Voice,
  inBeat: readonly InBeat<T>[],
  ends: readonly Fraction[],
  misfits: T[],
): Cell {
  const slots = subdivisionFor([...inBeat.map(({ phase }) => phase), ...ends]);
  const marks: Mark[] = Array.from({ length: slots }, () => '.');
  for (const { stroke, phase } of inBeat) {
    const slot = (phase.num * slots) / phase.den;
    const mark = fits(phase, slots) ? markOf(home, stroke) : null;
    if (mark === null || marks[slot] !== '.') misfits.push(stroke);
    else marks[slot] = mark;
  }
  return cell(marks.join(''));
}

function beatOf(inBar: Fraction, starts: readonly Fraction[]): number {
  return starts.findLastIndex((start) => toNumber(start) <= toNumber(inBar));
}

/** A stretch of score time, in whole notes from the first bar line. */
interface Stretch {
  readonly from: Fraction;
  readonly to: Fraction;
}

function heldOf(strokes: readonly PlacedStroke[], meter: Meter): readonly Stretch[] {
  return strokes.flatMap(({ bar, inBar, held }) => {
    if (!held) return [];
    const from = add(multiply(meter.bar, fraction(bar)), inBar);
    return [{ from, to: add(from, held) }];
  });
}

/** A cell with `~` in the silent slots of what is held; it begins at `start` and is `length` long. */
function holding(of: Cell, start: Fraction, length: Fraction, held: readonly Stretch[]): Cell {
  const marks = of.marks.map((mark, slot) => {
    const at = toNumber(add(start, multiply(length, fraction(slot, of.marks.length))));
    const isHeld = held.some(({ from, to }) => at > toNumber(from) && at < toNumber(to));
    return mark === '.' && isHeld ? '~' : mark;
  });
  return cell(marks.join(''));
}

/** The parts of `bars` bars of a meter; strokes must lie inside them. */
export function assembleParts<T extends PlacedStroke>(
  strokes: readonly T[],
  meter: Meter,
  bars: number,
): Assembled<T> {
  const starts = beatStarts(meter);
  const misfits: T[] = [];
  const homes = groupByHomeVoice(strokes);
  const parts = VOICES.flatMap((voice): ExercisePart[] => {
    const mine = homes.get(voice);
    if (!mine) return [];
    const beats = groupBy(mine, (stroke) => stroke.bar * starts.length + beatOf(stroke.inBar, starts));
    const held = heldOf(mine, meter);
    const cellAt = (bar: number, beat: number) => {
      const inBeat = (beats.get(bar * starts.length + beat) ?? []).map((stroke) => {
        const phase = divide(subtract(stroke.inBar, starts[beat] as Fraction), beatLength(meter, beat));
        return { stroke, phase };
      });
      const length = beatLength(meter, beat);
      const start = add(multiply(meter.bar, fraction(bar)), starts[beat] as Fraction);
      const ends = held
        .map(({ to }) => divide(subtract(to, start), length))
        .filter(({ num, den }) => num > 0 && num < den);
      const own = assembleBeat(voice, inBeat, ends, misfits);
      return held.length > 0 ? holding(own, start, length, held) : own;
    };
    const rows = Array.from({ length: bars }, (_, bar) => starts.map((_, beat) => cellAt(bar, beat)));
    return [{ voice, pattern: { bars: held.length > 0 ? released(rows) : rows } }];
  });
  return { parts, misfits };
}
