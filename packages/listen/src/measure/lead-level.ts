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
}

/**
 * The median level of the lead voice; where it did not play, where it would lie if the others were balanced as asked.
 * @param askedDb level that the lesson asks of each voice, in dB
 */
export function leadLevelDb(
  lead: Voice,
  strokes: readonly Loud[],
  askedDb: Readonly<Partial<Record<Voice, number>>>,
): number {
  const own = strokes.filter(({ voice }) => voice === lead);
  if (own.length > 0) return median(own.map(({ levelDb }) => levelDb));
  const leadAsked = askedDb[lead] ?? 0;
  return median(
    strokes.flatMap(({ voice, levelDb }) => {
      const asked = askedDb[voice];
      return asked === undefined ? [] : [levelDb - (asked - leadAsked)];
    }),
  );
}
