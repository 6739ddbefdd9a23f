/**
 * Placed strokes to patterns: one part a voice, every beat in the coarsest subdivision that has all its strokes.
 */

import { groupBy } from '../group-by.ts';
import { VOICES, type Voice } from '../kit/voice.ts';
import type { ExercisePart } from '../lesson/lesson.ts';
import { type Cell, cell, type Mark, SUBDIVISIONS, type Subdivision } from '../rhythm/cell.ts';
import { divide, type Fraction, subtract, toNumber } from '../rhythm/fraction.ts';
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

function assembleBeat<T extends PlacedStroke>(home: Voice, inBeat: readonly InBeat<T>[], misfits: T[]): Cell {
  const slots = subdivisionFor(inBeat.map(({ phase }) => phase));
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
    const cellAt = (bar: number, beat: number) => {
      const inBeat = (beats.get(bar * starts.length + beat) ?? []).map((stroke) => {
        const phase = divide(subtract(stroke.inBar, starts[beat] as Fraction), beatLength(meter, beat));
        return { stroke, phase };
      });
      return assembleBeat(voice, inBeat, misfits);
    };
    const rows = Array.from({ length: bars }, (_, bar) => starts.map((_, beat) => cellAt(bar, beat)));
    return [{ voice, pattern: { bars: rows } }];
  });
  return { parts, misfits };
}
