/** A voice at a written place, as a name for maps and sets. */
import type { Voice, WrittenPlace } from '@shedbook/core';

/** A place and a voice as one key. */
export function strokeKey(voice: Voice, place: WrittenPlace): string {
  return `${voice} ${place.bar}.${place.beat}.${place.slot}`;
}
