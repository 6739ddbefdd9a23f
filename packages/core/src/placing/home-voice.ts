/**
 * Which voice a sounding voice is written under: side stick and rim shot with the snare's marks, an open hi-hat
 * with the hi-hat's, as a teacher would write them.
 *
 * Conventions: a voice moves in with its neighbour only where that one plays too and never at the same moment;
 * otherwise it stays a part of its own.
 */

import { groupBy } from '../group-by.ts';
import { homeOf } from '../kit/strike.ts';
import type { Voice } from '../kit/voice.ts';
import { formatFraction } from '../rhythm/fraction.ts';
import type { PlacedStroke } from './placed.ts';

function moment(stroke: PlacedStroke): string {
  return `${stroke.bar} ${formatFraction(stroke.inBar)}`;
}

function meet(some: readonly PlacedStroke[], others: readonly PlacedStroke[]): boolean {
  const moments = new Set(some.map(moment));
  return others.some((stroke) => moments.has(moment(stroke)));
}

/** The strokes by the voice they are written under. */
export function groupByHomeVoice<T extends PlacedStroke>(
  strokes: readonly T[],
): ReadonlyMap<Voice, readonly T[]> {
  const own = groupBy(strokes, (stroke) => stroke.voice);
  const homes = new Map<Voice, readonly T[]>(own);
  for (const [voice, moving] of own) {
    const home = homeOf(voice);
    const there = home && homes.get(home);
    if (!home || !there || meet(there, moving)) continue;
    homes.delete(voice);
    homes.set(home, [...there, ...moving]);
  }
  return homes;
}
