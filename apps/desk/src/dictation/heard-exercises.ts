/**
 * What of a take can be kept in a lesson: every exercise that was heard over the groove, and what repeats in every bar as
 * one more.
 */
import { type Exercise, formatPattern, type GroovePart, type Lesson, type Voice } from '@shedbook/core';
import type { Transcript } from '@shedbook/listen';
import type { Unnumbered } from '../edit/exercises.ts';

/** Something that can be kept. */
export interface Keepable {
  readonly of: 'exercise' | 'groove';
  readonly exercise: Exercise;
  /** The text of each voice. */
  readonly lines: readonly { readonly voice: Voice; readonly text: string }[];
  /** Whether it is kept unless a person says otherwise. */
  readonly isWanted: boolean;
}

function keepable(of: Keepable['of'], exercise: Exercise, isWanted: boolean): Keepable {
  const lines = exercise.parts.map(({ voice, pattern }) => ({ voice, text: formatPattern(pattern) }));
  return { of, exercise, lines, isWanted };
}

function isWrittenIn({ groove }: Lesson, heard: readonly GroovePart[]): boolean {
  const textOf = (parts: readonly GroovePart[]) =>
    parts.map(({ voice, pattern }) => `${voice} ${formatPattern(pattern)}`).toSorted();
  return textOf(groove).join() === textOf(heard).join();
}

/** What can be kept, exercises first; a groove that the lesson has already is not kept again unless it is wanted. */
export function keepablesOf({ exercises, groove }: Transcript, lesson: Lesson): readonly Keepable[] {
  const whole = { number: exercises.length + 1, name: null, sticking: null, notes: null, parts: groove };
  return [
    ...exercises.map((exercise) => keepable('exercise', exercise, true)),
    ...(groove.length > 0
      ? [keepable('groove', whole, exercises.length === 0 && !isWrittenIn(lesson, groove))]
      : []),
  ];
}

/** The exercises that a person keeps. @param kept their indices */
export function keptOf(all: readonly Keepable[], kept: ReadonlySet<number>): readonly Unnumbered[] {
  return all.flatMap(({ exercise: { number: _, ...exercise } }, index) =>
    kept.has(index) ? [exercise] : [],
  );
}
