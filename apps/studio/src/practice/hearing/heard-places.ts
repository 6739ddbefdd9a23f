/**
 * Where a heard stroke is drawn: at the head that it belongs to, moved by its lateness.
 *
 * Conventions: units of the drawing (ten are one staff space), x from the bar line, y downward from the middle
 * line; lateness in ms, positive is late and to the right.
 */
import {
  type Exercise,
  type Lesson,
  type NotatedBar,
  notateBar,
  STAFF_POSITIONS,
  type Voice,
  type WrittenPlace,
} from '@shedbook/core';
import { beatEdges, SPACE, slotX } from '../../notation/layout.ts';

/** Lateness is drawn this many times as wide as it was: 20 ms would hardly be seen. */
export const EXAGGERATION = 4;

/** Farthest that a head is moved, in units: beyond, it would look like another note. */
export const FARTHEST = 26;

/** How many units of the drawing a second takes at a tempo in quarter notes a minute. */
function unitsPerSecond(lesson: Lesson, bpm: number): number {
  const edges = beatEdges(lesson.meter);
  const quarters = (4 * lesson.meter.bar.num) / lesson.meter.bar.den;
  return ((edges.at(-1) ?? 0) / quarters) * (bpm / 60);
}

/** How far a head is moved, and whether it would have been farther. */
export function displacement(
  lesson: Lesson,
  bpm: number,
  offsetMs: number,
): { readonly dx: number; readonly isBeyond: boolean } {
  const dx = (offsetMs / 1000) * unitsPerSecond(lesson, bpm) * EXAGGERATION;
  const isBeyond = Math.abs(dx) > FARTHEST;
  return { dx: isBeyond ? Math.sign(dx) * FARTHEST : dx, isBeyond };
}

/** Middle of the head of a written stroke. */
export function headAt(
  lesson: Lesson,
  place: WrittenPlace,
  voice: Voice,
  slots: number,
): { readonly x: number; readonly y: number } {
  const x = slotX(beatEdges(lesson.meter), place.beat - 1, (place.slot - 1) / slots);
  return { x, y: ((4 - STAFF_POSITIONS[voice]) * SPACE) / 2 };
}

/** The bars that are drawn: those of the exercise with the groove under them, or the groove alone. */
export function barsToDraw(lesson: Lesson, exercise: Exercise | null, layers: number): readonly NotatedBar[] {
  const joins = new Set(lesson.layers.slice(0, layers).flatMap((layer) => layer.joins));
  const own = exercise && joins.has('pattern') ? exercise.parts : [];
  const replaced = new Set(own.map((part) => part.voice));
  const groove = lesson.groove.filter((part) => joins.has(part.voice) && !replaced.has(part.voice));
  const parts = [...groove, ...own];
  const counted = own.length > 0 ? own : groove;
  const bars = Math.max(1, ...counted.map((part) => part.pattern.bars.length));
  return Array.from({ length: bars }, (_, bar) =>
    notateBar(
      parts.map(({ voice, pattern }) => ({ voice, cells: pattern.bars[bar % pattern.bars.length] ?? [] })),
      lesson.meter,
    ),
  );
}
