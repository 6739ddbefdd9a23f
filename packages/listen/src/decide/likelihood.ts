/**
 * How likely what sounds is, if an exercise was played in some bars.
 *
 * Conventions: natural logarithms; a take is a list of chances that a voice was struck, in order of time; every chance
 * counts, those that nothing is written for and the places that nothing was found for too, so that exercises of a lesson
 * compare whatever they have in common.
 */
import type { Voice } from '@shedbook/core';
import { sigmoid } from '@shedbook/signal';
import type { HeardEvent } from '../detect/events.ts';
import { HEARD_COUNT, outputOf } from '../network/heard-voices.data.ts';
import type { Place } from './places.ts';

/** A moment at which a voice may have been struck. */
export interface Chance {
  readonly voice: Voice;
  readonly timeSeconds: number;
  /** How sure it is that it was, 0 to 1. */
  readonly struck: number;
}

/** A written stroke is played so often, and one that is not written is so often. */
const PLAYED = 0.93;
const ADDED = 0.03;
/** Chances under this are none. */
const LEAST = 0.03;
/** Evidence of events near each other says the same twice, and kits differ: it counts so much less. */
const SOFTER = 1.5;

/** Evidence of a voice that comes by itself on this kit, by voice: it counts as nothing. */
export type Eagerness = ReadonlyMap<Voice, number>;

/** The chances of some voices in a recording. @param free evidence whatever is written, as by `hearFreely` */
export function chancesIn(
  events: readonly HeardEvent[],
  free: Float64Array,
  voices: readonly Voice[],
  eagerness: Eagerness = new Map(),
): readonly Chance[] {
  return voices.flatMap((voice) => {
    const index = outputOf(voice);
    const eager = eagerness.get(voice) ?? 0;
    return events.flatMap(({ timeSeconds, offsetMs }, e): Chance[] => {
      const struck = sigmoid((free[e * HEARD_COUNT + index]! - eager) / SOFTER);
      if (struck < LEAST) return [];
      const offset = Math.max(-25, Math.min(25, offsetMs[index]!));
      return [{ voice, timeSeconds: timeSeconds + offset / 1000, struck }];
    });
  });
}

function logOf(struck: number, expected: number): number {
  return Math.log(struck * expected + (1 - struck) * (1 - expected));
}

/** What the chances of one voice make of its places. */
interface Explained {
  readonly logLikelihood: number;
  /** Strokes that were played where they are written, and all that were played: sums of chances. */
  readonly there: number;
  readonly played: number;
}

/** Both in order of time; each chance is of one place at most. */
function explain(chances: readonly Chance[], places: readonly number[], reachSeconds: number): Explained {
  const used = new Uint8Array(chances.length);
  let [sum, there, played] = [0, 0, 0];
  let from = 0;
  for (const seconds of places) {
    while (from < chances.length && chances[from]!.timeSeconds < seconds - reachSeconds) from += 1;
    let best = -1;
    for (let i = from; i < chances.length && chances[i]!.timeSeconds <= seconds + reachSeconds; i += 1) {
      if (used[i] === 0 && (best < 0 || chances[i]!.struck > chances[best]!.struck)) best = i;
    }
    if (best >= 0) used[best] = 1;
    const struck = best < 0 ? 0 : chances[best]!.struck;
    there += struck;
    sum += logOf(struck, PLAYED);
  }
  for (let i = 0; i < chances.length; i += 1) {
    played += chances[i]!.struck;
    if (used[i] === 0) sum += logOf(chances[i]!.struck, ADDED);
  }
  return { logLikelihood: sum, there, played };
}

/** Chances by voice, in order of time. */
export type ChancesByVoice = ReadonlyMap<Voice, readonly Chance[]>;

/** Chances sorted out by voice. */
export function byVoice(chances: readonly Chance[]): ChancesByVoice {
  const found = new Map<Voice, Chance[]>();
  for (const chance of chances.toSorted((a, b) => a.timeSeconds - b.timeSeconds)) {
    const own = found.get(chance.voice);
    if (own) own.push(chance);
    else found.set(chance.voice, [chance]);
  }
  return found;
}

function secondsOf(places: readonly Place[], voice: Voice): readonly number[] {
  return places.filter((place) => place.expected.voice === voice).map((place) => place.likelySeconds);
}

/**
 * Log likelihood of all chances if these places were what was to be played. A limb of the groove that is never heard stayed
 * out whatever was played: it says nothing, or few bars would be likelier than many.
 */
export function logLikelihood(
  chances: ChancesByVoice,
  places: readonly Place[],
  reachSeconds: number,
): number {
  const isSilent = ({ expected }: Place) => expected.stroke.role === 'groove' && !chances.has(expected.voice);
  const asked = places.flatMap((place) => (isSilent(place) ? [] : [place.expected.voice]));
  const voices = new Set([...chances.keys(), ...asked]);
  let sum = 0;
  for (const voice of voices)
    sum += explain(chances.get(voice) ?? [], secondsOf(places, voice), reachSeconds).logLikelihood;
  return sum;
}

/** How well some voices' chances agree with their places: an F-measure of sums of chances, 0 to 1. */
export function softAgreement(
  chances: ChancesByVoice,
  places: readonly Place[],
  voices: ReadonlySet<Voice>,
  reachSeconds: number,
): number {
  let [there, all] = [0, 0];
  for (const voice of voices) {
    const own = secondsOf(places, voice);
    const explained = explain(chances.get(voice) ?? [], own, reachSeconds);
    there += explained.there;
    all += explained.played + own.length;
  }
  return all === 0 ? 0 : (2 * there) / all;
}
