/**
 * Each limb by itself: how early or late it is at each place beside the student's own pulse, and how evenly it plays.
 *
 * Conventions: milliseconds, positive late.
 */
import { groupBy, Milliseconds, type Voice } from '@shedbook/core';
import { mean, median } from '@shedbook/signal';
import type { Allowance } from '../level/levels.data.ts';
import { allowedMs, allowedSpreadMs } from '../perception/perception.ts';
import { spreadOf } from '../take/own-pulse.ts';
import type { Finding } from '../verdict/finding.ts';
import { ELSEWHERE_MS } from './doubts.ts';
import type { Places } from './places.ts';
import type { Offset } from './timed-round.ts';
import type { Timing } from './timing.ts';

/** Fewest strokes of a voice that its time is judged by. */
const FEWEST_OF_VOICE = 3;
/** What a place's median is uncertain by: standard errors, and the least spread that anybody is given. */
const STANDARD_ERRORS = 2;
const LEAST_SPREAD_MS = 5;

function limitAt({ pair }: Offset, limits: Allowance): number {
  const { intervalSeconds, together } = pair.due.asked;
  return allowedMs(limits, intervalSeconds, together);
}

/** Offsets of a voice about each place's own median, where a place comes round often enough to have one. */
function aboutPlaces(byPlace: ReadonlyMap<string, readonly Offset[]>): readonly number[] {
  const all = [...byPlace.values()].flat().map(({ ms }) => ms);
  const middle = median(all);
  return [...byPlace.values()].flatMap((offsets) => {
    const often = offsets.length >= FEWEST_OF_VOICE;
    const centre = often ? mean(offsets.map(({ ms }) => ms)) : middle;
    const lost = often ? Math.sqrt(offsets.length / (offsets.length - 1)) : 1;
    return offsets.map(({ ms }) => lost * (ms - centre));
  });
}

function unevenOf(
  voice: Voice,
  offsetsMs: readonly number[],
  beatSeconds: number,
  limits: Allowance,
): readonly Finding[] {
  if (offsetsMs.length < FEWEST_OF_VOICE) return [];
  const spreadMs = spreadOf(offsetsMs);
  const sure = 1 - 0.9 / Math.sqrt(2 * Math.max(1, offsetsMs.length - 1));
  const strength = (Math.max(0, sure) * spreadMs) / allowedSpreadMs(limits, beatSeconds);
  return [{ what: 'uneven', voice, ms: Milliseconds(spreadMs), strength }];
}

interface PlaceTime {
  readonly name: string;
  readonly ms: number;
  readonly strength: number;
  readonly count: number;
}

function placeTimes(
  byPlace: ReadonlyMap<string, readonly Offset[]>,
  spreadMs: number,
  limits: Allowance,
): readonly PlaceTime[] {
  return [...byPlace].flatMap(([name, offsets]): PlaceTime[] => {
    const ms = median(offsets.map((offset) => offset.ms));
    const margin = (STANDARD_ERRORS * Math.max(LEAST_SPREAD_MS, spreadMs)) / Math.sqrt(offsets.length);
    const limit = median(offsets.map((offset) => limitAt(offset, limits)));
    const strength = Math.max(0, Math.abs(ms) - margin) / limit;
    return [{ name, ms, strength, count: offsets.length }];
  });
}

/** Places of a voice that are off in one direction, as one finding. */
function offPlaces(voice: Voice, off: readonly PlaceTime[], places: Places): readonly Finding[] {
  const [first] = off;
  if (!first) return [];
  const what = first.ms < 0 ? 'early' : 'late';
  const ms = Milliseconds(Math.abs(median(off.map((place) => place.ms))));
  const strength = Math.max(...off.map((place) => place.strength));
  const at = off.toSorted((a, b) => b.strength - a.strength).flatMap(({ name }) => places.placesOf(name));
  if (places.isThroughout(voice, off.length)) return [{ what, voice, ms, strength }];
  const inEveryBar = off.every(({ name }) => places.comesRound(name));
  return [{ what, voice, ms, strength, places: at, inEveryBar }];
}

/** What is to be said of a voice; what is under the limit too, to be sifted. */
export function voiceFindings(
  voice: Voice,
  offsets: readonly Offset[],
  { limits, places, kind }: Timing,
): readonly Finding[] {
  if (offsets.length < FEWEST_OF_VOICE) return [];
  const byPlace = groupBy(offsets, ({ pair }) => places.nameOf(pair.due));
  const spreadMs = spreadOf(aboutPlaces(byPlace));
  // an ear that expects a stroke at its place takes the moment of one that is far from it less exactly
  const near = [...byPlace].filter(
    ([, own]) => kind === 'midi' || Math.abs(median(own.map(({ ms }) => ms))) <= ELSEWHERE_MS,
  );
  const even = aboutPlaces(new Map(near));
  const beatSeconds = median(offsets.map(({ pair }) => pair.due.beatSeconds));
  const times = placeTimes(byPlace, spreadMs, limits).filter(({ strength }) => strength >= 1);
  return [
    ...unevenOf(voice, even, beatSeconds, limits),
    ...offPlaces(
      voice,
      times.filter(({ ms }) => ms < 0),
      places,
    ),
    ...offPlaces(
      voice,
      times.filter(({ ms }) => ms > 0),
      places,
    ),
  ];
}
