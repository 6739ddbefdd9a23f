/**
 * The level that all levels of a report are relative to, so that a report says the same whatever the gain of a
 * microphone or the velocities of a kit, and compares with what a lesson asks.
 *
 * Conventions: decibels on the source's own scale, K-weighted re full scale of a recording, as sent of a kit.
 */
import type { Voice } from '@shedbook/core';
import { median } from '@shedbook/signal';

interface Loud {
  readonly voice: Voice;
  readonly levelDb: number;
  /** What is asked at its place; null where nothing is written. */
  readonly place?: { readonly expected: { readonly stroke: { readonly levelDb: number } } } | null;
}

/**
 * How loud a voice is: what is asked of it in the middle, and how far its strokes lie from what is asked at their places,
 * so that it is no matter which of its accents and ghost notes were heard. The median where nothing is written.
 * @param askedDb level that the lesson asks of it in the middle
 */
export function voiceLevelDb(strokes: readonly Loud[], askedDb: number | undefined): number {
  const apart = strokes.flatMap(({ levelDb, place }) =>
    place ? [levelDb - place.expected.stroke.levelDb] : [],
  );
  if (apart.length === 0 || askedDb === undefined) return median(strokes.map(({ levelDb }) => levelDb));
  return askedDb + median(apart);
}

/** Strokes nearer than this sound together. */
const TOGETHER_SECONDS = 0.035;
/** So many strokes that sound alone tell how loud a voice is better than all of them. */
export const FEWEST_ALONE = 6;

/** The strokes of a voice that tell how loud it is: those that sound alone, where they are enough. @param all in order of time */
export function tellingOf<T extends Loud & { readonly timeSeconds: number }>(
  voice: Voice,
  all: readonly T[],
): readonly T[] {
  const isNear = (one: T, other: T | undefined) =>
    other !== undefined && Math.abs(other.timeSeconds - one.timeSeconds) < TOGETHER_SECONDS;
  const own = all.filter((one) => one.voice === voice);
  const alone = all.filter(
    (one, i) => one.voice === voice && !isNear(one, all[i - 1]) && !isNear(one, all[i + 1]),
  );
  return alone.length < FEWEST_ALONE ? own : alone;
}

/**
 * The level of the lead voice; where it did not play, where it would lie if the others were balanced as asked.
 * @param askedDb level that the lesson asks of each voice, in dB
 */
export function leadLevelDb(
  lead: Voice,
  strokes: readonly (Loud & { readonly timeSeconds: number })[],
  askedDb: Readonly<Partial<Record<Voice, number>>>,
): number {
  const own = tellingOf(lead, strokes);
  if (own.length > 0) return voiceLevelDb(own, askedDb[lead]);
  const leadAsked = askedDb[lead] ?? 0;
  return median(
    strokes.flatMap(({ voice, levelDb }) => {
      const asked = askedDb[voice];
      return asked === undefined ? [] : [levelDb - (asked - leadAsked)];
    }),
  );
}
