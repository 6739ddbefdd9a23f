/**
 * What is missing and what is too much, voice by voice: a verdict over all limbs together would hide a limb that
 * stayed out.
 *
 * Conventions: shares of one voice's due strokes. A stroke that the ear is unsure of is not held against anyone.
 */
import { groupBy, type Voice, type WrittenPlace } from '@shedbook/core';
import type { Allowance } from '../level/levels.data.ts';
import type { Due } from '../take/due.ts';
import { type Match, surfaceOf } from '../take/match.ts';
import { type Finding, NOT_YET } from '../verdict/finding.ts';
import { onePlaceEach, type Places } from './places.ts';
import { stretchOf } from './stretches.ts';

/** From this confidence (0 to 1) on, what the ear says is held against the student. */
export const SURE = 0.5;
/** An ear misses this share of strokes and hears this share too many, which no student is held to account for. */
const EAR_SHARE = { audio: 0.1, midi: 0 } as const;
/** One stroke may always be the ear's. */
const EAR_STROKES = { audio: 1, midi: 0 } as const;
/** From this share on, a voice stayed out. */
const STAYED_OUT = 0.75;
/** So many strokes elsewhere, as a share of those that are missing, show that a limb played somewhere else. */
const ELSEWHERE_SHARE = 0.5;
/** A limb that stayed out weighs more than any lateness. */
const STAYED_OUT_STRENGTH = 20;
/** Strokes too many weigh this much of strokes too few. */
const EXTRA_WEIGHT = 0.5;
/** Missed in so many of the times that it comes round, a place is missing, and not only one bar's stroke. */
const AGAIN_SHARE = 0.6;

/** What strokes are counted by. */
export interface Counting {
  readonly kind: 'audio' | 'midi';
  readonly limits: Allowance;
  readonly places: Places;
  /** Voices of which the ear missed nothing. */
  readonly plain: ReadonlySet<Voice>;
}

interface MissedPlaces {
  readonly places: readonly WrittenPlace[];
  readonly inEveryBar: boolean;
}

/** Places that are missing whenever they come round, each once, and single strokes that are. */
function missedPlaces(missed: readonly Due[], places: Places, all: Match): MissedPlaces {
  const found = groupBy(missed, (one) => places.nameOf(one));
  const told = [...found]
    .toSorted(([, a], [, b]) => b.length - a.length)
    .map(([name, times]) => {
      const played = all.pairs.filter((pair) => places.nameOf(pair.due) === name).length;
      const again = times.length >= AGAIN_SHARE * (times.length + played);
      return again
        ? { at: places.placesOf(name), again: places.comesRound(name) }
        : { at: times.map(({ asked }) => asked.written), again: false };
    });
  return {
    places: onePlaceEach(told.flatMap(({ at }) => at)),
    inEveryBar: told.every(({ again }) => again),
  };
}

function missingOf(voice: Voice, match: Match, counting: Counting): readonly Finding[] {
  const { limits, places } = counting;
  const kind = counting.plain.has(voice) ? 'midi' : counting.kind;
  const missed = match.missed.filter((one) => one.voice === voice);
  const played = match.pairs.flatMap((pair) => (pair.due.voice === voice ? [pair.due] : []));
  const due = missed.length + played.length;
  const share = missed.length / due;
  if (share <= limits.wrongShare + EAR_SHARE[kind] || missed.length <= EAR_STROKES[kind]) return [];
  const how = { what: 'missing', voice, times: missed.length, of: due } as const;
  if (share >= STAYED_OUT) {
    const elsewhere = extraStrokes(surfaceOf(voice), match).length;
    const isElsewhere = elsewhere >= ELSEWHERE_SHARE * missed.length;
    return [{ ...how, ...(isElsewhere ? { elsewhere } : {}), strength: STAYED_OUT_STRENGTH * share }];
  }
  const strength = Math.max(1, (NOT_YET * share) / (limits.stumbleShare + EAR_SHARE[kind]));
  const stretch = stretchOf(missed, [...missed, ...played]);
  return [{ ...how, ...missedPlaces(missed, places, match), ...stretch, strength }];
}

/** The written stroke nearest to each stroke too many. */
function placesNear(extra: Match['extra'], due: readonly Due[]): readonly WrittenPlace[] {
  const near = extra.flatMap(({ seconds }) => {
    const nearest = due.reduce<Due | null>(
      (best, one) =>
        !best || Math.abs(one.seconds - seconds) < Math.abs(best.seconds - seconds) ? one : best,
      null,
    );
    return nearest ? [nearest.asked.written] : [];
  });
  return onePlaceEach(near);
}

/** Strokes too many on a surface that the ear is sure of. */
function extraStrokes(surface: Voice, { extra }: Match): Match['extra'] {
  return extra.filter(({ voice, confidence }) => surfaceOf(voice) === surface && confidence >= SURE);
}

function extraOf(surface: Voice, match: Match, due: readonly Due[], counting: Counting): readonly Finding[] {
  const { kind, limits } = counting;
  const extra = extraStrokes(surface, match);
  const own = due.filter(({ voice }) => surfaceOf(voice) === surface).length;
  const share = extra.length / Math.max(own, extra.length, 1);
  if (share <= limits.wrongShare + EAR_SHARE[kind] || extra.length <= EAR_STROKES[kind]) return [];
  const strength = Math.max(1, (EXTRA_WEIGHT * NOT_YET * share) / (limits.stumbleShare + EAR_SHARE[kind]));
  const voice = extra[0]?.voice ?? surface;
  return [{ what: 'extra', voice, places: placesNear(extra, due), times: extra.length, of: own, strength }];
}

/** Strokes left out and added, voice by voice. */
export function strokeFindings(match: Match, due: readonly Due[], counting: Counting): readonly Finding[] {
  const written = [...new Set(due.map(({ voice }) => voice))];
  const heard = [...new Set(match.extra.map(({ voice }) => surfaceOf(voice)))];
  return [
    ...written.flatMap((voice) => missingOf(voice, match, counting)),
    ...heard.flatMap((surface) => extraOf(surface, match, due, counting)),
  ];
}
