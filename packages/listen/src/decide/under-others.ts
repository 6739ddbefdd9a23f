/**
 * A voice that is clear wherever it sounds alone, under others that are never struck without it: what it takes there to be
 * believed is told by how it sounds under the same others throughout the take, and not by how it sounds alone.
 *
 * Conventions: evidence with the score, a logit. Where the ear mostly cannot hear it under some others, nobody can say whether
 * a stroke that was not heard there was played: it is neither heard nor missed.
 */
import { groupBy } from '@shedbook/core';
import { median, quantile, spread } from '@shedbook/signal';
import type { Place } from './places.ts';
import { isClearAlone, type Moment, shareHigher } from './plays.ts';

/** Under this middle a voice is not heard under the others at all. */
const HEARD = -3;
/** Spreads under the middle that a stroke may lie, and the least spread. */
const SPREADS = 3;
const LEAST_SPREAD = 0.5;
/** Fewer moments under the same others tell nothing. */
const FEWEST = 4;
/** Where less than this share of what is written under the same others was heard, what was not heard is not missing. */
const MOSTLY = 0.6;
/** So often must a voice sound more like itself under the others than they do alone. */
const PARTED = 0.8;
/** What is needed lies over so much of the evidence where the voice is not written. */
const ELSEWHERE_SHARE = 0.95;

/** What is known of a voice under others. */
export interface UnderOthers {
  /** What a stroke at a place needs; infinity where nothing but the voice's own need tells. */
  readonly neededAt: (place: Place) => number;
  /** The places of which it cannot be said whether they were played, of those that were not heard. */
  readonly lost: (heard: ReadonlySet<Place>) => ReadonlySet<Place>;
}

const NOTHING_KNOWN: UnderOthers = {
  neededAt: () => Number.POSITIVE_INFINITY,
  lost: () => new Set(),
};

const toldOf = (moments: readonly Moment[]) => moments.map(({ told }) => told).filter(Number.isFinite);
const freeOf = (moments: readonly Moment[]) => moments.map(({ free }) => free).filter(Number.isFinite);

/** What a voice needs under others that are also heard alone: what lies between, where both looks part the two. */
function neededBeside(own: readonly Moment[], alone: readonly Moment[]): number {
  const [lowest, highest] = [
    quantile(toldOf(own), 1 - ELSEWHERE_SHARE),
    quantile(toldOf(alone), ELSEWHERE_SHARE),
  ];
  const isParted = lowest > highest && shareHigher(freeOf(own), freeOf(alone)) >= PARTED;
  return isParted ? (lowest + highest) / 2 : Number.POSITIVE_INFINITY;
}

/** What a voice needs under others that are never heard alone; infinity where it is not heard there. */
function neededIn(own: readonly Moment[], elsewhere: readonly Moment[]): number {
  const told = toldOf(own);
  if (told.length < FEWEST || median(told) < HEARD) return Number.POSITIVE_INFINITY;
  const least = median(told) - SPREADS * Math.max(LEAST_SPREAD, spread(told));
  const others = toldOf(elsewhere);
  return others.length === 0 ? least : Math.max(least, quantile(others, ELSEWHERE_SHARE));
}

/** What is known of a voice under others; nothing of one that is not clear alone. @param moments as by `momentsFor` */
export function underOthers(moments: readonly Moment[]): UnderOthers {
  if (!isClearAlone(moments)) return NOTHING_KNOWN;
  const elsewhere = moments.filter(({ isOwn }) => !isOwn);
  const aloneBy = groupBy(elsewhere, ({ others }) => others);
  const byOthers = groupBy(
    moments.filter(({ isOwn }) => isOwn),
    ({ others }) => others,
  );
  const layers = [...byOthers].flatMap(([others, own]) => (aloneBy.has(others) ? [] : [own]));
  const needs = new Map<Place, number>();
  const placesOf = (own: readonly Moment[]) => own.flatMap(({ place }) => place ?? []);
  for (const [others, own] of byOthers) {
    const alone = aloneBy.get(others);
    const needed = alone ? neededBeside(own, alone) : neededIn(own, elsewhere);
    for (const place of placesOf(own)) needs.set(place, needed);
  }
  return {
    neededAt: (place) => needs.get(place) ?? Number.POSITIVE_INFINITY,
    lost: (heard) =>
      new Set(
        layers
          .filter(([first]) => first?.others !== 0)
          .map(placesOf)
          .filter((all) => all.filter((place) => heard.has(place)).length < MOSTLY * all.length)
          .flat(),
      ),
  };
}
