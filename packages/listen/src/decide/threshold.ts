/**
 * How sure the evidence for a voice must be on this kit: it is shy with kits that are unlike all it was trained on, and
 * being written raises evidence of itself.
 *
 * Of a limb that does not play nothing is believed but what the sound alone is sure of. Of one that plays, evidence
 * gathers round one middle where it is written and round another where only others are, and the threshold lies between
 * them in proportion to their spreads, no lower under 0 and no higher over it than most written strokes need.
 *
 * Conventions: evidence as logits; middles are medians, spreads are median absolute deviations as of a normal
 * distribution, so that some strokes that were left out move neither.
 * Source: the boundary of two normal distributions with spreads weighed linearly.
 */
import { median, spread } from '@shedbook/signal';
import { FEWEST, isPlaying, type Moment, type Playing } from './plays.ts';

/** Spreads count as at least this. */
const LEAST_SPREAD = 0.8;
/** Without the score the middles must be this many mean spreads apart. */
const APART = 1.5;
/** With the middles so many mean spreads apart the sound alone tells a voice. */
const CLEARLY_APART = 3;
/**
 * Of a limb that does not play, what any of its strokes needs, with the score and without it: of 3535 places of limbs
 * that stayed out 19 had both.
 */
const SILENT = 2;
/** Bounds of what lies between. */
const LOWEST = -0.8;
const HIGHEST = 1.5;

const MOST_EAGER = 2;
/** So few strokes of a voice tell how eagerly it is heard, where they are clearly apart. */
const FEWEST_TOLD = 3;

interface Gathering {
  readonly middle: number;
  readonly spread: number;
}

/** Evidence for a voice where it is written, and where only others are. */
interface Sides {
  readonly there: Gathering;
  readonly elsewhere: Gathering;
}

/** What strokes of a voice need. */
export interface Need {
  readonly playing: Playing;
  /** The evidence that a written stroke needs. */
  readonly written: number;
  /**
   * The least evidence of the sound alone that any stroke needs: on a kit on which the voice is told without a score, a
   * stroke that only the score sees is none. Negative infinity where the sound alone does not tell.
   */
  readonly alone: number;
}

function gather(values: readonly number[]): Gathering {
  return { middle: median(values), spread: Math.max(LEAST_SPREAD, spread(values)) };
}

/** The two gatherings of evidence, or null where there is too little of either. */
function sidesOf(
  moments: readonly Moment[],
  read: (moment: Moment) => number,
  fewest = FEWEST,
): Sides | null {
  const of = (isOwn: boolean) =>
    moments
      .filter((moment) => moment.isOwn === isOwn)
      .map(read)
      .filter(Number.isFinite);
  const [there, elsewhere] = [of(true), of(false)];
  if (there.length < fewest || elsewhere.length < FEWEST) return null;
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

function neededBetween(alone: Sides | null, sides: Sides | null): number {
  if (!alone || !sides || apartness(alone) < APART) return 0;
  const most = sides.there.middle - 2 * sides.there.spread;
  const boundary = boundaryOf(sides);
  if (boundary > 0) return Math.max(0, Math.min(boundary, most, HIGHEST));
  return Math.max(LOWEST, Math.min(0, Math.max(boundary, most)));
}

/** How eagerly a voice is heard where it is not: what lies between, if it lies over 0 and the voice is told; else 0. */
export function eagernessOf(moments: readonly Moment[]): number {
  const alone = sidesOf(moments, ({ free }) => free, FEWEST_TOLD);
  if (!alone || apartness(alone) < APART || isPlaying(moments) === 'no') return 0;
  return Math.max(0, Math.min(MOST_EAGER, boundaryOf(alone)));
}

function leastAlone(alone: Sides | null): number {
  if (!alone || apartness(alone) < CLEARLY_APART) return Number.NEGATIVE_INFINITY;
  return Math.min(boundaryOf(alone), alone.there.middle - 3 * alone.there.spread);
}

/** What strokes of a voice need in a take, by every moment of its score. */
export function needOf(moments: readonly Moment[]): Need {
  const playing = isPlaying(moments);
  if (playing === 'no') return { playing, written: SILENT, alone: SILENT };
  const alone = sidesOf(moments, ({ free }) => free);
  const told = sidesOf(moments, (moment) => moment.told);
  return { playing, written: neededBetween(alone, told), alone: leastAlone(alone) };
}
