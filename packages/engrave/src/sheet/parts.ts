/** The voices of an exercise as they are printed, bar by bar. */
import {
  type BarPart,
  barPart,
  type Exercise,
  grooveUnder,
  handsOf,
  type Lesson,
  type Mark,
  type NotatedBar,
  notateBar,
  type Pattern,
  type Strike,
  strikeOf,
  strokesOfBar,
  struckSlots,
  type Voice,
} from '@shedbook/core';

/** A voice with its pattern and, where written, the hands of all its strokes. */
export interface PrintedPart {
  readonly voice: Voice;
  readonly pattern: Pattern;
  readonly sticking: readonly ('R' | 'L' | 'B')[] | null;
}

/** The parts of the groove. */
export function grooveParts(lesson: Lesson): readonly PrintedPart[] {
  return lesson.groove.map((part) => ({ ...part, sticking: null }));
}

/** The exercise's own parts. */
export function ownParts(exercise: Exercise): readonly PrintedPart[] {
  return exercise.parts.map((part, index) => ({ ...part, sticking: handsOf(exercise, index) }));
}

/** The exercise over the groove as it plays under it. */
export function wholeParts(lesson: Lesson, exercise: Exercise): readonly PrintedPart[] {
  const groove = grooveUnder(lesson, exercise).map((part) => ({ ...part, sticking: null }));
  return [...groove, ...ownParts(exercise)];
}

/** Bars until all parts begin anew together, at most `most`. */
export function barCount(parts: readonly PrintedPart[], most: number): number {
  const counts = parts.map((part) => Math.max(1, part.pattern.bars.length));
  let bars = 1;
  while (bars < most && counts.some((count) => bars % count !== 0)) bars += 1;
  return bars;
}

function stickingOfBar(part: PrintedPart, bar: number): readonly ('R' | 'L' | 'B')[] | null {
  if (!part.sticking) return null;
  const { from, to } = strokesOfBar(part.pattern, bar);
  return part.sticking.slice(from, to);
}

/** The parts of one bar (from 0). */
export function partsOfBar(parts: readonly PrintedPart[], bar: number): readonly BarPart[] {
  return parts.map((part) => {
    const index = bar % Math.max(1, part.pattern.bars.length);
    const sticking = stickingOfBar(part, index);
    const own = barPart(part.voice, part.pattern, index);
    return sticking ? { ...own, sticking } : own;
  });
}

/** Bars of notation. */
export function notatedBars(
  lesson: Lesson,
  parts: readonly PrintedPart[],
  bars: number,
): readonly NotatedBar[] {
  return Array.from({ length: bars }, (_, bar) => notateBar(partsOfBar(parts, bar), lesson.meter));
}

/** Whether one line can show the parts: a single voice. */
export function fitsOneLine(parts: readonly PrintedPart[]): boolean {
  return parts.length === 1;
}

/** Every way that the voices are struck in parts. */
export function strikesOf(parts: readonly PrintedPart[]) {
  return parts.flatMap((part) =>
    part.pattern.bars
      .flat()
      .flatMap((cell) =>
        struckSlots(cell).flatMap((slot) => strikeOf(part.voice, cell.marks[slot] as Mark) ?? []),
      ),
  );
}

/** Every way of striking that is held somewhere in the parts. */
export function heldStrikesOf(parts: readonly PrintedPart[]): readonly Strike[] {
  return parts.flatMap(({ voice, pattern }) => {
    const marks = pattern.bars.flatMap((bar) => bar.flatMap((cell) => cell.marks));
    return marks.flatMap((mark, at) => (marks[at + 1] === '~' ? (strikeOf(voice, mark) ?? []) : []));
  });
}
