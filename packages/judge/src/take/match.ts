/**
 * Which stroke is which written one: the one matching that loops and takes, other exercises and other drums are
 * judged by.
 *
 * Conventions: a stroke belongs to a written one of its own surface within reach, the nearest pairs first, each used
 * once. A rim shot is a stroke on the snare.
 */
import type { Voice } from '@shedbook/core';
import type { Due } from './due.ts';
import type { PlayedStroke } from './played.ts';

/** A stroke and the written one that it is. */
export interface Pair {
  readonly due: Due;
  readonly stroke: PlayedStroke;
  /** How late it came; seconds. */
  readonly lateSeconds: number;
}

/** What was matched. */
export interface Match {
  readonly pairs: readonly Pair[];
  readonly missed: readonly Due[];
  readonly extra: readonly PlayedStroke[];
}

/** The voice that a stroke counts for: one drum is one drum, wherever it is hit. */
export function surfaceOf(voice: Voice): Voice {
  return voice === 'rimshot' ? 'snare' : voice;
}

/** How late a stroke is expected, whatever is due: a steady lateness, or one that changes through the take. */
export type LatenessAt = (due: Due) => number;

interface Candidate {
  readonly due: number;
  readonly stroke: number;
  readonly late: number;
}

function indexBySurface(strokes: readonly PlayedStroke[]): ReadonlyMap<Voice, readonly number[]> {
  const indices = new Map<Voice, number[]>();
  strokes.forEach(({ voice }, index) => {
    const surface = surfaceOf(voice);
    const own = indices.get(surface);
    if (own) own.push(index);
    else indices.set(surface, [index]);
  });
  return indices;
}

/** Index of the first of some strokes that is not before a time. */
function firstFrom(strokes: readonly PlayedStroke[], indices: readonly number[], seconds: number): number {
  let low = 0;
  let high = indices.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((strokes[indices[middle] as number] as PlayedStroke).seconds < seconds) low = middle + 1;
    else high = middle;
  }
  return low;
}

function candidates(
  due: readonly Due[],
  strokes: readonly PlayedStroke[],
  latenessAt: LatenessAt,
): readonly Candidate[] {
  const indices = indexBySurface(strokes);
  return due.flatMap((one, index) => {
    const own = indices.get(surfaceOf(one.voice)) ?? [];
    const at = one.seconds + latenessAt(one);
    const found: Candidate[] = [];
    for (let i = firstFrom(strokes, own, at - one.reachSeconds); i < own.length; i += 1) {
      const stroke = own[i] as number;
      const late = (strokes[stroke] as PlayedStroke).seconds - at;
      if (late > one.reachSeconds) break;
      found.push({ due: index, stroke, late });
    }
    return found;
  });
}

/**
 * Matches strokes with what was due.
 * @param due in order of time
 * @param strokes in order of time
 */
export function matchStrokes(
  due: readonly Due[],
  strokes: readonly PlayedStroke[],
  latenessAt: LatenessAt,
): Match {
  const strokeOf = new Map<number, number>();
  const taken = new Set<number>();
  const nearest = candidates(due, strokes, latenessAt).toSorted(
    (a, b) => Math.abs(a.late) - Math.abs(b.late),
  );
  for (const { due: index, stroke } of nearest) {
    if (strokeOf.has(index) || taken.has(stroke)) continue;
    strokeOf.set(index, stroke);
    taken.add(stroke);
  }
  return {
    pairs: due.flatMap((one, index): Pair[] => {
      const stroke = strokes[strokeOf.get(index) ?? -1];
      return stroke ? [{ due: one, stroke, lateSeconds: stroke.seconds - one.seconds }] : [];
    }),
    missed: due.filter((_, index) => !strokeOf.has(index)),
    extra: strokes.filter((_, index) => !taken.has(index)),
  };
}

/** How well strokes agree with what was due: the F-measure, 0 to 1; 0 where nothing is. */
export function agreementOf({ pairs, missed, extra }: Match): number {
  const all = 2 * pairs.length + missed.length + extra.length;
  return all === 0 ? 0 : (2 * pairs.length) / all;
}
