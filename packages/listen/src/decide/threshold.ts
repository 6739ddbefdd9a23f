/**
 * How sure the evidence for a voice must be on this kit: it is shy with kits that are unlike all it was trained on, and
 * being written raises evidence of itself.
 *
 * Of a limb that does not play nothing is believed but what the sound alone is sure of; a doubtful one needs the more, the
 * less likely it plays. Of one that plays, evidence gathers round one middle where it is written and round another where
 * only others are, and the threshold lies between them in proportion to their spreads, no lower under 0 and no higher over
 * it than most written strokes need. Where the two do not mix at all, it lies in the gap between them, however low: a kit
 * may make a voice sound shy throughout.
 *
 * Conventions: evidence as logits; middles are medians, spreads are median absolute deviations as of a normal
 * distribution, so that some strokes that were left out move neither.
 * Source: the boundary of two normal distributions with spreads weighed linearly.
 */
import { median, quantile, spread } from '@shedbook/signal';
import { doubtOf, FEWEST, isFarApart, isParted, isPlaying, type Moment, type Playing } from './plays.ts';

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

/**
 * What lies between two gatherings that do not mix is no lower than the first; no lower than the second where the first
 * look is sure of the voice at one of its places in ten: the limb plays, and under other voices it is taken to go on.
 * Of limbs that stayed out of our own recordings evidence with the score came to -1.4 at most, and no first look was sure.
 */
const LOWEST_PARTED = -1.3;
const LOWEST_CLEAR = -3;
/**
 * The same where the sound alone keeps it far from what the same others sound like without it: of feathered bass drums under
 * brushes evidence with the score comes to -4.3, of silent ones no sound alone was ever far.
 */
const LOWEST_FAR = -5;
const CLEAR_PLACES = 0.1;
/** Gatherings mix where more than this share of one reaches into the other. */
const STRAYS = 0.05;
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

type Read = (moment: Moment) => number;

/** What is read at the moments where a voice is written, and where only others are. */
function split(moments: readonly Moment[], read: Read): readonly [readonly number[], readonly number[]] {
  const of = (isOwn: boolean) =>
    moments
      .filter((moment) => moment.isOwn === isOwn)
      .map(read)
      .filter(Number.isFinite);
  return [of(true), of(false)];
}

/** The two gatherings of evidence, or null where there is too little of either. */
function sidesOf(moments: readonly Moment[], read: Read, fewest = FEWEST): Sides | null {
  const [there, elsewhere] = split(moments, read);
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

/** What counts as no evidence at all, where nothing was struck. */
const NOTHING = -20;

/** The middle of the gap between where a voice is written and where only others are; null where they mix. */
function gapOf(moments: readonly Moment[], read: Read): number | null {
  const of = (isOwn: boolean) =>
    moments.filter((moment) => moment.isOwn === isOwn).map((moment) => Math.max(NOTHING, read(moment)));
  const [lowest, highest] = [quantile(of(true), STRAYS), quantile(of(false), 1 - STRAYS)];
  return lowest > highest ? (lowest + highest) / 2 : null;
}

/** Whether the first look is sure of a voice at some of its places. */
function isClearSomewhere(moments: readonly Moment[]): boolean {
  const own = moments.filter(({ isOwn }) => isOwn).map(({ early }) => Math.max(NOTHING, early));
  return quantile(own, 1 - CLEAR_PLACES) >= 0;
}

/** What a voice needs that is written at every moment: what hardly any stroke lies under, as it is heard there. */
function neededEverywhere(moments: readonly Moment[]): number {
  if (isClearSomewhere(moments)) return LOWEST_CLEAR;
  const { middle, spread: width } = gather(moments.map(({ told }) => told).filter(Number.isFinite));
  return Math.max(LOWEST, Math.min(0, middle - 3 * width));
}

/** Under this nothing is believed of a voice that is parted from the others. */
function lowestOf(moments: readonly Moment[]): number {
  if (isFarApart(moments)) return LOWEST_FAR;
  return isClearSomewhere(moments) ? LOWEST_CLEAR : LOWEST_PARTED;
}

/**
 * What a voice needs that is parted from the others: what lies in the gap, where there is one. Where a look that does not
 * know the score has a gap, every written stroke was struck, and nothing more is asked of the sound alone.
 */
function needOfParted(moments: readonly Moment[], need: Need): Need {
  const told = gapOf(moments, (moment) => moment.told);
  const free = gapOf(moments, (moment) => moment.free);
  const isStruck = free !== null || gapOf(moments, ({ early }) => early) !== null;
  return {
    playing: need.playing,
    written: told === null ? need.written : Math.min(need.written, Math.max(lowestOf(moments), told)),
    alone: isStruck ? Math.min(need.alone, free ?? Number.NEGATIVE_INFINITY) : need.alone,
  };
}

/** What strokes of a voice need in a take, by every moment of its score. @param isAccent as for `isPlaying` */
export function needOf(moments: readonly Moment[], isAccent = false): Need {
  const playing = isPlaying(moments, isAccent);
  if (playing === 'no') return { playing, written: SILENT, alone: SILENT };
  if (moments.filter(({ isOwn }) => !isOwn).length < FEWEST)
    return { playing, written: neededEverywhere(moments), alone: Number.NEGATIVE_INFINITY };
  const alone = sidesOf(moments, ({ free }) => free);
  const told = sidesOf(moments, (moment) => moment.told);
  const need = { playing, written: neededBetween(alone, told), alone: leastAlone(alone) };
  if (isParted(moments)) return needOfParted(moments, need);
  return { ...need, written: Math.max(need.written, doubtOf(moments)) };
}
