/**
 * Strokes too faint to be believed under louder ones, and yet there: where both looks without the score hear more of a voice
 * than in the same others without it, it was not left out.
 *
 * Conventions: evidence as logits.
 */
import { groupBy } from '@shedbook/core';
import type { Place } from './places.ts';
import { type Moment, shareHigher } from './plays.ts';

/** Fewer moments of the same others, with the voice or without it, tell nothing. */
const FEWEST = 4;
/**
 * The least share of pairs in which the moment with the voice is the higher, by each look: three standard deviations over what
 * chance gives a dozen of either (H. B. Mann and D. R. Whitney, Ann. Math. Stat. 18(1), 1947).
 */
const LEAST_SHARE = 0.85;

/** The places of those given at which a voice is faint, and not missing. @param moments as by `momentsFor` */
export function faintPlaces(moments: readonly Moment[], under: ReadonlySet<Place>): ReadonlySet<Place> {
  const faint = [...groupBy(moments, ({ others }) => others).values()].flatMap((layer) => {
    const own = layer.filter(({ isOwn }) => isOwn);
    const others = layer.filter(({ isOwn }) => !isOwn);
    if (Math.min(own.length, others.length) < FEWEST) return [];
    const isOver = (read: (moment: Moment) => number) =>
      shareHigher(own.map(read), others.map(read)) >= LEAST_SHARE;
    const isThere = isOver(({ free }) => free) && isOver(({ early }) => early);
    return isThere ? own.flatMap(({ place }) => place ?? []) : [];
  });
  return new Set(faint.filter((place) => under.has(place)));
}
