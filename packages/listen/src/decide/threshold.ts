/**
 * How sure the evidence for a voice must be on this kit: it is shy with kits that are unlike all it was trained on, and
 * being written raises evidence of itself.
 *
 * Where a voice is written its evidence gathers round one middle, where only others are written round another. Where
 * the sound alone, heard without the score, tells the two apart, the threshold lies between them in proportion to their
 * spreads, no lower under 0 and no higher over it than most written strokes need; where the sound alone sees no difference the
 * voice may well stay out, and more is needed; otherwise evidence over 0.
 *
 * Conventions: evidence as logits; middles are medians, spreads are median absolute deviations as of a normal
 * distribution, so that some strokes that were left out move neither.
 * Source: the boundary of two normal distributions with spreads weighed linearly.
 */
import { median, spread } from '@shedbook/signal';
import type { HeardEvent } from '../detect/events.ts';
import type { Evidence } from './evidence.ts';
import type { Place } from './places.ts';

/** An event this near to a written place is of it; places farther apart than twice that have nothing in common. */
const NEAR_SECONDS = 0.04;
/** Spreads count as at least this. */
const LEAST_SPREAD = 0.8;
/** Without the score the middles must be this many mean spreads apart, the written one not under the second figure. */
const APART = 1.5;
const LOWEST_MIDDLE = -1.5;
/** Nearer than so many mean spreads the sound alone sees no difference. */
const ALIKE = 0.25;
/** Needed where the sound alone does not bear out what is written. */
const UNBORNE = 1.2;
/** With the middles so many mean spreads apart the sound alone tells a voice. */
const CLEARLY_APART = 3;
/** Fewer written places than this tell nothing. */
const FEWEST = 9;
/** Bounds of what lies between. */
const LOWEST = -0.8;
const HIGHEST = 1.5;

interface Gathering {
  readonly middle: number;
  readonly spread: number;
}

/** The places of a voice, and those of all voices, in order of time. */
export interface Places {
  readonly own: readonly Place[];
  readonly all: readonly Place[];
}

/** Evidence for a voice where it is written, and where only others are. */
export interface Sides {
  readonly there: Gathering;
  readonly elsewhere: Gathering;
}

function gather(values: readonly number[]): Gathering {
  return { middle: median(values), spread: Math.max(LEAST_SPREAD, spread(values)) };
}

/** The highest evidence near each of some moments in order; negative infinity where there is no event. */
function highestNear(
  events: readonly HeardEvent[],
  logits: Float64Array,
  moments: readonly number[],
): readonly number[] {
  let from = 0;
  return moments.map((seconds) => {
    while (from < events.length && events[from]!.timeSeconds < seconds - NEAR_SECONDS) from += 1;
    let highest = Number.NEGATIVE_INFINITY;
    for (let e = from; e < events.length && events[e]!.timeSeconds <= seconds + NEAR_SECONDS; e += 1)
      highest = Math.max(highest, logits[e]!);
    return highest;
  });
}

/** Moments at which only other voices are written, each once. */
function momentsElsewhere({ own, all }: Places): readonly number[] {
  const moments: number[] = [];
  let next = 0;
  for (const { likelySeconds: seconds } of all) {
    while (next < own.length && own[next]!.likelySeconds < seconds - 2 * NEAR_SECONDS) next += 1;
    if (next < own.length && own[next]!.likelySeconds <= seconds + 2 * NEAR_SECONDS) continue;
    if (moments.length === 0 || seconds - moments.at(-1)! > NEAR_SECONDS) moments.push(seconds);
  }
  return moments;
}

/** The two gatherings of evidence, or null where there is too little of either. */
export function sidesFrom(there: readonly number[], elsewhere: readonly number[]): Sides | null {
  if (there.length < FEWEST || elsewhere.length < FEWEST) return null;
  return { there: gather(there), elsewhere: gather(elsewhere) };
}

/** How many mean spreads lie between the middles. */
function apartness({ there, elsewhere }: Sides): number {
  return (2 * (there.middle - elsewhere.middle)) / (there.spread + elsewhere.spread);
}

/** What lies between the middles, in proportion to the spreads. */
function boundaryOf({ there, elsewhere }: Sides): number {
  const share = elsewhere.spread / (there.spread + elsewhere.spread);
  return elsewhere.middle + (there.middle - elsewhere.middle) * share;
}

/** What strokes of a voice need. */
export interface Need {
  /** The evidence that a written stroke needs. */
  readonly written: number;
  /**
   * The least evidence of the sound alone that any stroke needs: on a kit on which the voice is told without a score, a
   * stroke that only the score sees is none. Negative infinity where the sound alone does not tell.
   */
  readonly alone: number;
}

/** What strokes of a voice need in a take. */
export function needsOf(events: readonly HeardEvent[], evidence: Evidence, places: Places): Need {
  const own = places.own.map((place) => place.likelySeconds);
  const others = momentsElsewhere(places);
  const sidesOf = (logits: Float64Array) => {
    const near = (moments: readonly number[]) => highestNear(events, logits, moments).filter(Number.isFinite);
    return sidesFrom(near(own), near(others));
  };
  const alone = sidesOf(evidence.free);
  return { written: needBetween(alone, sidesOf(evidence.logit)), alone: leastAlone(alone) };
}

/** The evidence that a written stroke needs, by how the sound alone and the score's claim tell a voice; 0 of nothing. */
export function needBetween(alone: Sides | null, sides: Sides | null): number {
  if (!alone || !sides) return 0;
  if (alone.there.middle < LOWEST_MIDDLE || apartness(alone) < ALIKE) return UNBORNE;
  if (apartness(alone) < APART) return 0;
  const most = sides.there.middle - 2 * sides.there.spread;
  const boundary = boundaryOf(sides);
  if (boundary > 0) return Math.max(0, Math.min(boundary, most, HIGHEST));
  return Math.max(LOWEST, Math.min(0, Math.max(boundary, most)));
}

function leastAlone(alone: Sides | null): number {
  if (!alone || apartness(alone) < CLEARLY_APART) return Number.NEGATIVE_INFINITY;
  return Math.min(boundaryOf(alone), alone.there.middle - 3 * alone.there.spread);
}
