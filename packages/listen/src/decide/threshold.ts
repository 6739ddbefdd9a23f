/**
 * How sure the evidence for a voice must be on this kit: it is shy with kits that are unlike all it was trained on.
 *
 * Where a voice is written its evidence gathers round one middle, elsewhere round another; the threshold lies between
 * them in proportion to their spreads, and no lower than most written strokes need. Being written raises evidence of
 * itself, so this holds only where the sound alone, heard without the score, tells the written places from the others
 * too; otherwise evidence over 0 is needed, and more where the sound alone denies the written places.
 *
 * Conventions: evidence as logits; middles are medians, spreads are median absolute deviations as of a normal
 * distribution, so that some strokes that were left out move neither.
 * Source: the boundary of two normal distributions with spreads weighed linearly.
 */
import type { HeardEvent } from '../detect/events.ts';
import { median } from '../measure/statistics.ts';
import type { Evidence } from './evidence.ts';
import type { Place } from './places.ts';

/** An event this near to a written place is of it; one farther than twice that is of none. */
const NEAR_SECONDS = 0.04;
/** Spreads count as at least this. */
const LEAST_SPREAD = 0.8;
/** Without the score the middles must be this many mean spreads apart, the written one not under the second figure. */
const APART = 1.5;
const LOWEST_MIDDLE = -1.5;
/** Needed where the sound alone says that the voice is not struck where it is written. */
const UNBORNE = 1.2;
/** With the middles so many mean spreads apart the sound alone tells a voice. */
const CLEARLY_APART = 4;
/** Fewer written places than this tell nothing. */
const FEWEST = 8;
const LOWEST = -0.8;

interface Gathering {
  readonly middle: number;
  readonly spread: number;
}

interface Sides {
  readonly there: Gathering;
  readonly elsewhere: Gathering;
}

function gather(values: readonly number[]): Gathering {
  const middle = median(values);
  const spread = 1.4826 * median(values.map((value) => Math.abs(value - middle)));
  return { middle, spread: Math.max(LEAST_SPREAD, spread) };
}

/** The highest evidence near each written place, and that of the events far from all. */
function sidesOf(
  events: readonly HeardEvent[],
  logits: Float64Array,
  places: readonly Place[],
): Sides | null {
  const there = new Array<number>(places.length).fill(Number.NEGATIVE_INFINITY);
  const elsewhere: number[] = [];
  let from = 0;
  events.forEach(({ timeSeconds }, e) => {
    while (from < places.length && places[from]!.likelySeconds < timeSeconds - 2 * NEAR_SECONDS) from += 1;
    let isFar = true;
    for (let p = from; p < places.length; p += 1) {
      const distance = Math.abs(places[p]!.likelySeconds - timeSeconds);
      if (places[p]!.likelySeconds > timeSeconds + 2 * NEAR_SECONDS) break;
      isFar = false;
      if (distance <= NEAR_SECONDS) there[p] = Math.max(there[p]!, logits[e]!);
    }
    if (isFar) elsewhere.push(logits[e]!);
  });
  const heard = there.filter(Number.isFinite);
  if (heard.length < FEWEST || elsewhere.length < FEWEST) return null;
  return { there: gather(heard), elsewhere: gather(elsewhere) };
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

/** The evidence that a written stroke of a voice needs. `places` are those of the voice, in order of time. */
export function neededEvidence(
  events: readonly HeardEvent[],
  evidence: Evidence,
  places: readonly Place[],
): number {
  const alone = sidesOf(events, evidence.free, places);
  const sides = sidesOf(events, evidence.logit, places);
  if (!alone || !sides) return 0;
  if (alone.there.middle < LOWEST_MIDDLE) return UNBORNE;
  if (apartness(alone) < APART) return 0;
  const most = sides.there.middle - 2 * sides.there.spread;
  return Math.max(LOWEST, Math.min(0, Math.max(boundaryOf(sides), most)));
}

/**
 * The least evidence of the sound alone that a stroke of a voice needs: on a kit on which the voice is told without a
 * score, a stroke that only the score sees is none. Negative infinity where the sound alone does not tell.
 */
export function leastAlone(
  events: readonly HeardEvent[],
  evidence: Evidence,
  places: readonly Place[],
): number {
  const alone = sidesOf(events, evidence.free, places);
  if (!alone || apartness(alone) < CLEARLY_APART) return Number.NEGATIVE_INFINITY;
  return Math.min(boundaryOf(alone), alone.there.middle - 3 * alone.there.spread);
}
