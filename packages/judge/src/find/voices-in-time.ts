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
import type { PlayedBar } from '../take/played.ts';
import type { Finding } from '../verdict/finding.ts';
import { ELSEWHERE_MS } from './doubts.ts';
import { onePlaceEach, type Places } from './places.ts';
import { stretchIn } from './stretches.ts';
import type { Offset } from './timed-round.ts';
import type { Timing } from './timing.ts';

/** Fewest strokes of a voice that its time is judged by. */
const FEWEST_OF_VOICE = 3;
/** What a place's median is uncertain by: standard errors, and the least spread that anybody is given. */
const STANDARD_ERRORS = 2;
const LEAST_SPREAD_MS = 5;
/**
 * A bar is off as a whole where its strokes lie so many times over what is allowed, by so many standard errors, and those of
 * the other bars less than so much of it; of fewer strokes in a bar nobody knows.
 */
const BAR_OFF = 1.5;
const BAR_ERRORS = 3;
const ELSE_SHARE = 0.5;
const FEWEST_IN_BAR = 2;

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

interface BarTime extends Pick<PlaceTime, 'ms' | 'strength'> {
  readonly bar: PlayedBar;
  readonly offsets: readonly Offset[];
}

/** The bars of a voice, each with how late it is in it. */
function barTimes(offsets: readonly Offset[], limits: Allowance): readonly BarTime[] {
  const bars = [...groupBy(offsets, ({ pair }) => pair.due.bar)].filter(
    ([, own]) => own.length >= FEWEST_IN_BAR,
  );
  const msOf = (own: readonly Offset[]) => own.map(({ ms }) => ms);
  const about = bars.flatMap(([, own]) => msOf(own).map((ms) => ms - median(msOf(own))));
  const spreadMs = Math.max(LEAST_SPREAD_MS, spreadOf(about));
  return bars.map(([bar, own]) => {
    const ms = median(msOf(own));
    const margin = (BAR_ERRORS * spreadMs) / Math.sqrt(own.length);
    const limit = median(own.map((offset) => limitAt(offset, limits)));
    return { bar, offsets: own, ms, strength: Math.max(0, Math.abs(ms) - margin) / limit };
  });
}

/** Whole bars in which a voice is off in one direction, while it is not in the others; none where there are no such. */
function offBars(offsets: readonly Offset[], limits: Allowance): readonly BarTime[] {
  const all = barTimes(offsets, limits);
  const off = all.filter(({ strength }) => strength >= BAR_OFF);
  const late = off.filter(({ ms }) => ms > 0);
  const most = 2 * late.length >= off.length ? late : off.filter(({ ms }) => ms < 0);
  const strokes = most.flatMap((one) => one.offsets);
  const others = all.flatMap((one) => (most.includes(one) ? [] : one.offsets));
  if (strokes.length < FEWEST_OF_VOICE || others.length < FEWEST_OF_VOICE) return [];
  const middle = (some: readonly Offset[]) => Math.abs(median(some.map(({ ms }) => ms)));
  return middle(others) < ELSE_SHARE * middle(strokes) ? most : [];
}

/** What is to be said of whole bars of a voice. @param least what the same strokes come to without looking at bars */
function offInBars(
  voice: Voice,
  off: readonly BarTime[],
  all: readonly PlayedBar[],
  least: readonly Finding[],
): Finding {
  const ms = median(off.flatMap(({ offsets }) => offsets.map((offset) => offset.ms)));
  const what = ms < 0 ? 'early' : 'late';
  const stretch = stretchIn(
    off.map(({ bar }) => bar),
    all,
  );
  const strength = Math.max(...[...off, ...least].map((one) => one.strength));
  const written = off.flatMap(({ offsets }) => offsets.map(({ pair }) => pair.due.asked.written));
  const at = stretch.bars ? { places: onePlaceEach(written), inEveryBar: false } : {};
  return { what, voice, ms: Milliseconds(Math.abs(ms)), strength, ...stretch, ...at };
}

/** What is to be said of a voice; what is under the limit too, to be sifted. */
export function voiceFindings(voice: Voice, offsets: readonly Offset[], timing: Timing): readonly Finding[] {
  const whole = placeFindings(voice, offsets, timing);
  const off = offBars(offsets, timing.limits);
  if (off.length === 0) return whole;
  const isOff = new Set(off.flatMap((one) => one.offsets));
  const bars = [...new Set(offsets.map(({ pair }) => pair.due.bar))];
  const rest = placeFindings(
    voice,
    offsets.filter((offset) => !isOff.has(offset)),
    timing,
  );
  return [offInBars(voice, off, bars, whole), ...rest];
}

/** The same, whatever bar a place comes round in. */
function placeFindings(
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
