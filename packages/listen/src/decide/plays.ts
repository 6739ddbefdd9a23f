/**
 * Whether a limb plays at all, before any of its strokes is believed.
 *
 * Where a voice is written it must sound more like itself than where only others are: a rank test, which asks neither
 * how loud nor how clear the voice is on this kit. The evidence does not know the score: that of the second look without
 * it, and that of the first look, each compared over all moments and again among moments at which the same other voices
 * are written, since a ride that is louder on 2 and 4 sounds a little like a hi-hat foot there. What the two looks say in
 * the middle, there and elsewhere, is weighed with it: a limb that is heard as itself plays even where its sound spreads.
 *
 * Conventions: evidence as logits, negative infinity where nothing was struck; shares from 0 to 1, of which 0.5 is what
 * chance gives.
 * Sources: H. B. Mann and D. R. Whitney, Ann. Math. Stat. 18(1), 1947 (the share of pairs); P. van Elteren, Bull. Int.
 * Stat. Inst. 37, 1960 (weights of the layers, without the 1 in the denominator).
 */
import { groupBy } from '@shedbook/core';
import { median, quantile } from '@shedbook/signal';
import type { Place } from './places.ts';

/** A moment of the score, as it sounds for one voice. */
export interface Moment {
  /** Whether the voice is written there. */
  readonly isOwn: boolean;
  /** The other voices that are written there, one bit each. */
  readonly others: number;
  /** Evidence of the second look without the score, a logit. */
  readonly free: number;
  /** Evidence of the first look, a logit. */
  readonly early: number;
  /** Evidence of the second look with the score, a logit. */
  readonly told: number;
  /** The place of the voice itself; left out where it is not written. */
  readonly place?: Place;
}

/** Fewer moments than this with the voice, or without it, tell little. */
export const FEWEST = 9;
/**
 * How likely it is that a limb plays, a logit: weights of the logits of both shares and of the four medians, a logistic
 * regression over 1624 limbs of takes of dev's kit and of our own recordings, 245 of them silent. Shares alone, at the same
 * recall (0.98 of strokes), let 43 silent ones pass where this lets 5, each fold of ten left out in turn.
 */
const LIKELY = {
  freeShare: 0.901,
  earlyShare: 1.752,
  freeThere: 0.829,
  earlyThere: 0.311,
  freeElsewhere: 0.588,
  earlyElsewhere: -0.27,
};
/** Medians count within these bounds, logits. */
const MOST = 6;
/** Shares are kept off 0 and 1 by so much. */
const SHARE_EDGE = 0.02;
/** Under this likelihood a limb does not play; from the other on there is no doubt that it does. */
const SILENT = 1;
const SURELY = 4;
/**
 * Under this likelihood each of its strokes needs as much evidence as it lacks: on takes of dev's kit so many were right
 * as with shares alone, and of 4331 of limbs that stayed out 16 were believed; without it 76, by shares alone 158.
 */
const DOUBTFUL = 2;
/** Nor does one with so small a mean share, unless its median evidence without the score is over the other bound. */
const LEAST_SHARE = 0.56;
const CLEAR = 2;
/** The same of few written places, by the mean share alone, of which chance may give less. */
const PLAYS_OF_FEW = 0.4;
/**
 * An accent of few places must be clear at one of them by a look that does not know the score: of 595 rim shots of dev's
 * kit that were played so one was lost at most, and of 9 believed at places of rim shots that were not, at least 6.
 */
const CLEAR_ONCE = 0;
/**
 * So many places are enough where the limb is surely likely: of 382 limbs of 1 to 8 places that played 280 are, and of 74 that
 * did not one, of two places, which a loudspeaker played.
 */
export const FEWEST_SURE = 3;
/** Layers with fewer pairs than this many times their moments tell nothing. */
const LEAST_WEIGHT = 6;
/**
 * Without other moments to compare with, the median evidence that shows a limb: of the first look, or else of the second,
 * which knows this kit and knows a hi-hat as shy as the first look finds it.
 */
const LEAST_FIRST = -2;
const LEAST_SECOND = 0.5;
/**
 * From these shares on written places and others hardly mix: the mean of the four, and that of the two of the first look.
 * Of 179 limbs that stayed out of our own recordings, where every bar sounds the same, none came to 0.89 and 0.85.
 */
const PARTED = 0.92;
const FIRST_PARTED = 0.9;
/**
 * The least likelihood of a limb that is parted: our own recordings repeat to the sample, so that the least of differences
 * parts their moments. Of limbs that stayed out none came over -1.7, of those that played none under 1.6.
 */
const LEAST_PARTED = -1;
/**
 * Fewer moments tell as much where they hardly mix at all: so many of the voice or of the others, from this share on. Of 29
 * limbs that stayed out of so few written places none came to it.
 */
const FEWEST_PARTED = 5;
const PARTED_OF_FEW = 0.9;
/** A voice that is written everywhere is best told where nothing else is written, if there are so many such moments. */
const FEWEST_BARE = 4;

/**
 * A voice is clear alone where most of its strokes under which nothing else is written are, by both looks without the score:
 * where a limb stays out nothing sounds there.
 */
const CLEAR_ALONE_SHARE = 0.6;
/**
 * A kit may make a voice shy throughout: it is clear alone, too, where the first look shows the limb in the middle, and both
 * looks together, logits, are so far over all that they hear where others are written.
 */
const FAR_OVER = 3;
/** All that is heard where others are written, but for this share. */
const STRAYS = 0.05;

/**
 * No more than this share of a whole voice is missing, and one more. Of closed hats on every eighth of funk and shuffle (twelve
 * kits, 96 takes) where single strokes were left out the rest was told rightly then; 0.23 and more was missing where all were
 * left out that come with another voice.
 */
const MISSING_SHARE = 0.12;

/** Whether a limb plays. */
export type Playing = 'yes' | 'perhaps' | 'no';

/** The share of pairs of which the first value is the higher; ties count half. NaN where there is no pair. */
export function shareHigher(values: readonly number[], others: readonly number[]): number {
  const [own, rest] = [new Float64Array(values).sort(), new Float64Array(others).sort()];
  let [higher, under] = [0, 0];
  for (let from = 0; from < own.length; ) {
    const value = own[from]!;
    let to = from + 1;
    while (own[to] === value) to += 1;
    while (rest[under]! < value) under += 1;
    let tied = 0;
    while (rest[under + tied] === value) tied += 1;
    higher += (to - from) * (under + tied / 2);
    from = to;
  }
  return higher / (values.length * others.length);
}

type Read = (moment: Moment) => number;

function compare(moments: readonly Moment[], read: Read): number {
  const own = moments.filter((moment) => moment.isOwn).map(read);
  const other = moments.filter((moment) => !moment.isOwn).map(read);
  return shareHigher(own, other);
}

/** The same among moments with the same others only; null where they are too few. */
function compareAlike(moments: readonly Moment[], read: Read): number | null {
  const layers = groupBy(moments, ({ others }) => others);
  let [sum, weights] = [0, 0];
  for (const layer of layers.values()) {
    const own = layer.filter((moment) => moment.isOwn).length;
    const weight = (own * (layer.length - own)) / layer.length;
    if (weight === 0) continue;
    sum += weight * compare(layer, read);
    weights += weight;
  }
  return weights < LEAST_WEIGHT ? null : sum / weights;
}

/** The mean of both shares of one look. */
function shareBy(moments: readonly Moment[], read: Read): number {
  const plain = compare(moments, read);
  return (plain + (compareAlike(moments, read) ?? plain)) / 2;
}

const early: Read = (moment) => moment.early;
const free: Read = (moment) => moment.free;

/** How much more a voice sounds where it is written than elsewhere: the mean of the four shares, 0 to 1. */
export function shareThere(moments: readonly Moment[]): number {
  return (shareBy(moments, free) + shareBy(moments, early)) / 2;
}

function isHeardThere(own: readonly Moment[]): boolean {
  const bare = own.filter(({ others }) => others === 0);
  const told = bare.length >= FEWEST_BARE ? bare : own;
  const middle = (read: Read) => median(told.map(read));
  return middle(early) >= LEAST_FIRST || middle(free) > LEAST_SECOND;
}

const bothLooks: Read = (moment) => moment.early + moment.free;

/** Whether a voice that is shy on this kit stands out where nothing else is written. */
function isShyAlone(bare: readonly Moment[], others: readonly Moment[]): boolean {
  if (others.length < FEWEST_BARE || median(bare.map(early)) < LEAST_FIRST) return false;
  return median(bare.map(bothLooks)) > quantile(others.map(bothLooks), 1 - STRAYS) + FAR_OVER;
}

/** Whether a voice is clearly heard where nothing else is written: then its limb plays, however it sounds under others. */
export function isClearAlone(moments: readonly Moment[]): boolean {
  const bare = moments.filter(({ isOwn, others }) => isOwn && others === 0);
  if (bare.length < FEWEST_BARE) return false;
  const clear = bare.filter((moment) => bothLooks(moment) >= 0);
  if (clear.length >= CLEAR_ALONE_SHARE * bare.length) return true;
  return isShyAlone(
    bare,
    moments.filter(({ isOwn }) => !isOwn),
  );
}

/**
 * Whether among moments at which the same others are written both looks without the score keep the voice so far over all
 * that they hear without it: then it was struck there, however little the score adds.
 */
export function isFarApart(moments: readonly Moment[]): boolean {
  return [...groupBy(moments, ({ others }) => others).values()].some((layer) => {
    const own = layer.filter(({ isOwn }) => isOwn);
    // where nothing sounds there is nothing to compare with
    const others = layer.filter((moment) => !moment.isOwn && Number.isFinite(moment.free));
    if (Math.min(own.length, others.length) < FEWEST_BARE) return false;
    const isOver = (read: Read) =>
      quantile(own.map(read), STRAYS) >= quantile(others.map(read), 1 - STRAYS) + FAR_OVER;
    return isOver(free) && isOver(early);
  });
}

/**
 * Whether a voice is whole: hands that keep time on eighths leave no moment without them to compare with, and where of such a
 * limb that plays hardly a stroke is missing, however shy, it is no guess. Of who leaves it out under others more is missing.
 * @param missing how many of its strokes were not heard
 */
export function isWhole(moments: readonly Moment[], missing: number): boolean {
  const own = moments.filter(({ isOwn }) => isOwn).length;
  const isEverywhere = moments.length - own < FEWEST;
  return isEverywhere && missing <= 1 + MISSING_SHARE * own && isPlaying(moments) === 'yes';
}

/** Whether neither look hears a voice without the score at most of its places. */
export function isShy(moments: readonly Moment[]): boolean {
  const own = moments.filter(({ isOwn }) => isOwn);
  return median(own.map(free)) < 0 && median(own.map(early)) < 0;
}

/** The middle of what is read of moments, within bounds. */
function middleOf(moments: readonly Moment[], read: Read): number {
  return median(moments.map((moment) => Math.max(-MOST, Math.min(MOST, read(moment)))));
}

const logitOf = (share: number): number => Math.log((share + SHARE_EDGE) / (1 + SHARE_EDGE - share));

/** How likely it is that the limb of a voice plays, a logit; of moments with it and without. */
export function likelyPlaying(moments: readonly Moment[]): number {
  const own = moments.filter((moment) => moment.isOwn);
  const others = moments.filter((moment) => !moment.isOwn);
  return (
    LIKELY.freeShare * logitOf(shareBy(moments, free)) +
    LIKELY.earlyShare * logitOf(shareBy(moments, early)) +
    LIKELY.freeThere * middleOf(own, free) +
    LIKELY.earlyThere * middleOf(own, early) +
    LIKELY.freeElsewhere * middleOf(others, free) +
    LIKELY.earlyElsewhere * middleOf(others, early)
  );
}

/** Whether a voice sounds so much more like itself where it is written that the limb plays, however shy its evidence. */
export function isParted(moments: readonly Moment[]): boolean {
  const count = moments.filter((moment) => moment.isOwn).length;
  const fewer = Math.min(count, moments.length - count);
  if (fewer < FEWEST_PARTED) return false;
  if (fewer < FEWEST) return shareThere(moments) >= PARTED_OF_FEW;
  const isApart = shareThere(moments) >= PARTED || shareBy(moments, early) >= FIRST_PARTED;
  return isApart && likelyPlaying(moments) >= LEAST_PARTED;
}

/**
 * The evidence that each stroke of a limb needs at least for the doubt whether it plays, a logit over 0; negative infinity
 * where there is none.
 */
export function doubtOf(moments: readonly Moment[]): number {
  const own = moments.filter((moment) => moment.isOwn).length;
  const isTold = own >= FEWEST && moments.length - own >= FEWEST;
  const doubt = isTold ? DOUBTFUL - likelyPlaying(moments) : 0;
  return doubt > 0 ? doubt : Number.NEGATIVE_INFINITY;
}

function isPlayingFew(moments: readonly Moment[], own: readonly Moment[], isAccent: boolean): Playing {
  if (isAccent && own.every((moment) => Math.max(moment.free, moment.early) < CLEAR_ONCE)) return 'no';
  if (own.length >= FEWEST_SURE && likelyPlaying(moments) >= SURELY) return 'yes';
  return shareThere(moments) < PLAYS_OF_FEW ? 'no' : 'perhaps';
}

/**
 * Whether the limb of a voice plays, by all moments of the score.
 * @param isAccent whether the voice is an accent, louder than all around it wherever it is struck
 */
export function isPlaying(moments: readonly Moment[], isAccent = false): Playing {
  const own = moments.filter((moment) => moment.isOwn);
  if (own.length === 0) return 'no';
  if (isClearAlone(moments)) return 'yes';
  if (moments.length - own.length < FEWEST) return isHeardThere(own) ? 'yes' : 'no';
  if (isParted(moments)) return 'yes';
  if (own.length < FEWEST) return isPlayingFew(moments, own, isAccent);
  const likely = likelyPlaying(moments);
  if (shareThere(moments) < LEAST_SHARE && median(own.map(free)) <= CLEAR) return 'no';
  if (likely >= SURELY) return 'yes';
  return likely < SILENT ? 'no' : 'perhaps';
}
