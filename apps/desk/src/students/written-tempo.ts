/** A tempo as a teacher writes it. */
import { bringWithin, LESSON_TEMPI, type Meter, quarterTempo } from '@shedbook/core';

/** The tempo that was written in beats of a meter, in quarter notes a minute within what a lesson may have; null where it is none. */
export function writtenTempo(meter: Meter, text: string): number | null {
  const counted = Number(text);
  if (text.trim() === '' || !Number.isFinite(counted) || counted <= 0) return null;
  return bringWithin(LESSON_TEMPI, quarterTempo(meter, counted));
}
