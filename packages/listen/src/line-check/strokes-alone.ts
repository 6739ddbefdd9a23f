/**
 * Finding the strokes of a line check: limb after limb, each by itself.
 *
 * Conventions: seconds; levels K-weighted, dB. Strokes of a limb are at least a third of a second apart; of what is heard nearer
 * to each other the surest is the stroke.
 */
import type { Voice } from '@shedbook/core';
import { dbToPower, powerToDb } from '@shedbook/signal';
import { ENERGY_BANDS } from '../detect/energy.ts';
import type { HeardEvent } from '../detect/events.ts';

/** A limb by itself: when it was struck. */
export interface Alone {
  readonly voice: Voice;
  readonly strokes: readonly number[];
}

const APART_SECONDS = 0.3;
/**
 * A stroke is louder than what was before it by so much, or some voice is surely heard there, a logit, as in a ride that rings on;
 * and it is no softer than the loudest beside it by so much.
 */
const RISE_DB = 3;
const SURE = 1;
const SOFTER_DB = 24;
/** So many decibels of rise tell as much as one logit. */
const RISE_OF_ONE = 8;
/**
 * A whole check holds soft limbs beside loud ones, and the noise of its rests: what is a stroke in it is asked ever more strictly
 * until the limbs lie apart. dB.
 */
const STRICTER = [
  { riseDb: 6, softerDb: 42 },
  { riseDb: 6, softerDb: 36 },
  { riseDb: 9, softerDb: 30 },
  { riseDb: 9, softerDb: 24 },
] as const;
/** Between two limbs is a rest, so many times as long as the longest between two strokes of one, and this long, in seconds. */
const REST = 1.4;
const LEAST_REST_SECONDS = 1.2;

/** Fewer strokes of a limb teach nothing; more are music, or several limbs without a rest between. */
export const FEWEST_ALONE = 6;
const MOST_ALONE = 16;

interface Struck {
  readonly seconds: number;
  readonly levelDb: number;
  readonly riseDb: number;
  /** The evidence for whichever voice is the surest there, a logit. */
  readonly surest: number;
  /** How much it looks like an onset: sure, and louder than what was before. */
  readonly onset: number;
}

function struckAt({ timeSeconds, energyDb, presence }: HeardEvent): Struck {
  const sum = (from: number) => {
    let power = 0;
    for (let band = from; band < from + ENERGY_BANDS; band += 1) power += dbToPower(energyDb[band]!);
    return powerToDb(power);
  };
  const levelDb = sum(0);
  const riseDb = levelDb - sum(ENERGY_BANDS);
  const surest = Math.max(...presence);
  return { seconds: timeSeconds, levelDb, riseDb, surest, onset: surest + riseDb / RISE_OF_ONE };
}

/** Of what is near each other the likeliest onset is the stroke: what is loud for a tenth of a second is so just before it as well. */
function strokesIn(events: readonly HeardEvent[], riseDb: number, softerDb: number): readonly number[] {
  const struck = events.map(struckAt).filter((one) => one.riseDb >= riseDb || one.surest >= SURE);
  const loudest = Math.max(...struck.map(({ levelDb }) => levelDb));
  const kept: number[] = [];
  for (const { seconds, levelDb } of struck.toSorted((a, b) => b.onset - a.onset)) {
    if (levelDb < loudest - softerDb) continue;
    if (kept.every((other) => Math.abs(other - seconds) >= APART_SECONDS)) kept.push(seconds);
  }
  return kept.toSorted((a, b) => a - b);
}

/** The strokes of one limb between two moments. */
export function strokesBetween(
  events: readonly HeardEvent[],
  fromSeconds: number,
  toSeconds: number,
): readonly number[] {
  const own = events.filter(({ timeSeconds }) => timeSeconds >= fromSeconds && timeSeconds < toSeconds);
  return strokesIn(own, RISE_DB, SOFTER_DB);
}

/** Strokes in as many groups as there are limbs, with a rest after each; null where they do not lie so. */
function groupsOf(strokes: readonly number[], count: number): readonly (readonly number[])[] | null {
  const gaps = strokes.slice(1).map((seconds, i) => ({ i: i + 1, length: seconds - strokes[i]! }));
  const byLength = gaps.toSorted((a, b) => b.length - a.length);
  const rests = byLength.slice(0, count - 1);
  const [shortest, longest] = [rests.at(-1)?.length, byLength[count - 1]?.length];
  if (rests.length < count - 1 || longest === undefined) return null;
  if (shortest !== undefined && shortest < Math.max(LEAST_REST_SECONDS, REST * longest)) return null;
  const starts = [0, ...rests.map(({ i }) => i).toSorted((a, b) => a - b)];
  const groups = starts.map((from, k) => strokes.slice(from, starts[k + 1]));
  return groups.every(({ length }) => length <= MOST_ALONE) ? groups : null;
}

/**
 * Where limbs follow each other, with a rest after each: from when to when each is heard; null where they cannot be told. Of
 * several ways to tell them the first in which all have enough strokes.
 */
export function limbsApart(
  events: readonly HeardEvent[],
  count: number,
): readonly { readonly fromSeconds: number; readonly toSeconds: number }[] | null {
  const ways = STRICTER.flatMap(({ riseDb, softerDb }) => [
    groupsOf(strokesIn(events, riseDb, softerDb), count) ?? [],
  ]).filter((groups) => groups.length > 0);
  const isWhole = (groups: readonly (readonly number[])[]) =>
    groups.every(({ length }) => length >= FEWEST_ALONE);
  const groups = ways.find(isWhole) ?? ways[0];
  const edge = APART_SECONDS / 2;
  return (
    groups?.map((strokes) => ({ fromSeconds: strokes[0]! - edge, toSeconds: strokes.at(-1)! + edge })) ?? null
  );
}
