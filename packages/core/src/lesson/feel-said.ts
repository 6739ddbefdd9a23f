/**
 * What is said of the feel beside meter and tempo, on paper and on every screen.
 *
 * Convention: a word for the feel tells how what stands between the beats is played. Nothing is said where it would tell
 * nothing: a compound meter is in three by itself, and beats that are written in three are played as they stand. Common
 * practice.
 */
import type { Feel } from '../feel/feel.ts';
import { type Cell, struckSlots } from '../rhythm/cell.ts';
import type { Lesson } from './lesson.ts';

type Written = Pick<Lesson, 'meter' | 'feel' | 'groove' | 'exercises' | 'vocabulary'>;

function cellsOf({ groove, exercises, vocabulary }: Written): readonly Cell[] {
  const parts = [...groove, ...exercises.flatMap((exercise) => exercise.parts)];
  return [...parts.flatMap(({ pattern }) => pattern.bars.flat()), ...vocabulary.map(({ cell }) => cell)];
}

/** Whether what is struck between the beats stands in threes, and nowhere in halves or quarters of a beat. */
function isWrittenInThrees(lesson: Written): boolean {
  const between = cellsOf(lesson).filter((cell) => struckSlots(cell).some((slot) => slot > 0));
  return between.length > 0 && between.every((cell) => cell.marks.length % 3 === 0);
}

/** The feel of a lesson or a section that is worth a word; null where it tells nothing. */
export function feelSaid(lesson: Written): Feel | null {
  const { feel, meter } = lesson;
  if (meter.compound) return feel.kind === 'even' || isTriplet(feel) ? null : feel;
  return feel.kind === 'even' && isWrittenInThrees(lesson) ? null : feel;
}

/** Whether the first of two eighths lasts twice as long as the second: swing in triplets. */
export function isTriplet(feel: Feel): boolean {
  return feel.kind === 'ratio' && feel.ratio === 2;
}
