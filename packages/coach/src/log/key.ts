/** Lasting names: an exercise is its patterns, so that a sheet can be renumbered without losing its practice. */
import { type Exercise, formatPattern } from '@shedbook/core';

/**
 * The lasting name of an exercise inside its lesson.
 * @example exerciseKey({ parts: [{ voice: 'snare', pattern: parsePattern('..x x.. ... x.x') }] }) // 'snare ..x x.. ... x.x'
 */
export function exerciseKey(exercise: Exercise): string {
  const parts = exercise.parts.map(({ voice, pattern }) => `${voice} ${formatPattern(pattern)}`);
  const hands = exercise.sticking ? ` (${exercise.sticking.join('')})` : '';
  return `${parts.join('; ')}${hands}`;
}

/** A lesson and an exercise (null: the groove alone) as one key. */
export function itemKey(lesson: string, exercise: string | null): string {
  return JSON.stringify([lesson, exercise]);
}
