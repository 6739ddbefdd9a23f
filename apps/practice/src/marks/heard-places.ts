/**
 * Where a heard stroke is drawn: at the head that it belongs to, moved by its lateness.
 *
 * Conventions: millimetres on a tile; lateness in ms, positive is late and to the right; tempi in quarter notes a
 * minute; beats and slots from 1.
 */
import type { Meter, Voice } from '@shedbook/core';
import type { PackBar, PackSlot } from '@shedbook/pack';
import { LATENESS_DRAWN } from '@shedbook/playing';

/** Farthest that a head is moved, in millimetres: beyond, it would look like another note. */
export const FARTHEST_MM = 5;

/** Quarter notes in a bar. */
function quartersOf(meter: Meter): number {
  return (4 * meter.bar.num) / meter.bar.den;
}

/** How many millimetres a second takes on a tile: from its first slot to its end, on the average of the bar. */
export function mmPerSecond(bar: PackBar, meter: Meter, bpm: number): number {
  const first = Math.min(bar.widthMm, ...bar.slots.map((slot) => slot.xMm));
  return ((bar.widthMm - first) / quartersOf(meter)) * (bpm / 60);
}

/** How far a head is moved, and whether it would have been farther. */
export function displacement(
  scaleMmPerSecond: number,
  offsetMs: number,
): { readonly dxMm: number; readonly isBeyond: boolean } {
  const dxMm = (offsetMs / 1000) * scaleMmPerSecond * LATENESS_DRAWN;
  const isBeyond = Math.abs(dxMm) > FARTHEST_MM;
  return { dxMm: isBeyond ? Math.sign(dxMm) * FARTHEST_MM : dxMm, isBeyond };
}

/** The head of a written stroke on a tile, or null where the tile does not show it. */
export function headOn(
  bar: PackBar,
  place: { readonly beat: number; readonly slot: number },
  voice: Voice,
): PackSlot | null {
  const found = bar.slots.find(
    (each) => each.struck && each.voice === voice && each.beat === place.beat && each.slot === place.slot,
  );
  return found ?? null;
}
