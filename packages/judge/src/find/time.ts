/**
 * Time, once it is known what was played: how late the performance is as a whole, whether it keeps its tempo, then each
 * place against the student's own pulse, then how evenly each limb plays.
 *
 * Conventions: milliseconds, positive late; percent of tempo, positive faster.
 */
import { type Bpm, Milliseconds, type Voice } from '@shedbook/core';
import { fitLine, mean, median } from '@shedbook/signal';
import type { Allowance } from '../level/levels.data.ts';
import {
  allowedMs,
  allowedSpreadMs,
  allowedTempoPercent,
  tempoChangePercent,
} from '../perception/perception.ts';
import { groupBy } from '../take/group-by.ts';
import type { HeardRound } from '../take/hearing.ts';
import type { Match, Pair } from '../take/match.ts';
import { ownPulse, spreadOf } from '../take/own-pulse.ts';
import type { Finding } from '../verdict/finding.ts';
import type { Places } from './places.ts';

/** A stroke, and how far it is from the student's own pulse. */
export interface Offset {
  readonly pair: Pair;
  readonly ms: number;
}

/** A round against its own pulse. */
export interface TimedRound {
  readonly offsets: readonly Offset[];
  /** How late the performance is as a whole, beside the bar lines. */
  readonly wholeMs: number;
  /** Tempo that was played, as a ratio to that of the bar lines. */
  readonly tempoRatio: number;
  /** Change of tempo inside the round, in percent. */
  readonly changePercent: number;
  readonly seconds: number;
  /** Quarter notes a minute of the bar lines. */
  readonly linesBpm: number;
}

/** A round is long enough to change its tempo from this many beats on. */
const FEWEST_BEATS = 12;
/** Tempo at the ends of a round is measured over this share of it, so that a steady change shows by two thirds. */
const END_SHARE = 1 / 3;
const ENDS_APART = 1 - END_SHARE;
/** Fewest strokes that a tempo is measured from. */
const FEWEST_STROKES = 5;

/** The slope of some strokes: seconds a beat. */
function slopeOf(pairs: readonly Pair[], biasOf: (voice: Voice) => number): number | null {
  if (pairs.length < FEWEST_STROKES) return null;
  const points = pairs.map(({ due, stroke }) => ({
    x: due.beats,
    y: stroke.seconds - biasOf(due.voice) / 1000,
    weight: 1,
  }));
  const { slope } = fitLine(points);
  return slope > 0 ? slope : null;
}

function changeWithin(offsets: readonly Offset[]): number {
  const beats = offsets.map(({ pair }) => pair.due.beats);
  const [from, to] = [Math.min(...beats), Math.max(...beats)];
  if (to - from < FEWEST_BEATS) return 0;
  const byVoice = groupBy(offsets, ({ pair }) => pair.due.voice);
  const biases = new Map([...byVoice].map(([voice, own]) => [voice, median(own.map(({ ms }) => ms))]));
  const within = (low: number, high: number) =>
    slopeOf(
      offsets.filter(({ pair }) => pair.due.beats >= low && pair.due.beats <= high).map(({ pair }) => pair),
      (voice) => biases.get(voice) ?? 0,
    );
  const first = within(from, from + END_SHARE * (to - from));
  const last = within(to - END_SHARE * (to - from), to);
  return first === null || last === null ? 0 : tempoChangePercent(first, last) / ENDS_APART;
}

/** A round against its own pulse. */
export function timeRound(
  { bars, match }: Pick<HeardRound, 'bars'> & { readonly match: Match },
  shape: { readonly lead: Voice; readonly quartersInBar: number },
): TimedRound {
  const { pairs } = match;
  const pulse = ownPulse(pairs, shape.lead);
  const offsets = pairs.map((pair) => ({ pair, ms: 1000 * (pair.stroke.seconds - pulse.secondsAt(pair)) }));
  const late = pairs.map((pair) => 1000 * (pulse.secondsAt(pair) - pair.due.seconds));
  const seconds = bars.reduce((sum, { barSeconds }) => sum + barSeconds, 0);
  return {
    offsets,
    wholeMs: late.length === 0 ? 0 : median(late),
    tempoRatio: pulse.tempoRatio,
    changePercent: offsets.length === 0 ? 0 : changeWithin(offsets),
    seconds,
    linesBpm: (60 * shape.quartersInBar * bars.length) / seconds,
  };
}

/** What time is measured by. */
export interface Timing {
  readonly limits: Allowance;
  readonly places: Places;
  readonly isAlongClick: boolean;
  /** The tempo asked of each round, by its index. */
  readonly askedBpm: (round: number, playedBpm: number) => number;
}

/** From this lateness of the whole performance on, it is worth a word. */
const OFFSET_MS = 20;
/** Leaving a click by this many times what limbs may be apart, over one round, is rushing or dragging. */
const LEAVES = 3;

function offsetFinding(rounds: readonly TimedRound[]): readonly Finding[] {
  const ms = median(rounds.map(({ wholeMs }) => wholeMs));
  if (Math.abs(ms) < OFFSET_MS) return [];
  return [{ what: 'offset', ms: Milliseconds(Math.round(ms)), strength: 1 }];
}

function alongClick(rounds: readonly TimedRound[], { limits }: Timing): readonly Finding[] {
  const leaves = rounds.map(({ tempoRatio, seconds }) => 1000 * seconds * (tempoRatio - 1));
  const ms = median(leaves);
  const strength = Math.abs(ms) / (LEAVES * limits.togetherMs);
  const percent = Math.abs(100 * (median(rounds.map(({ tempoRatio }) => tempoRatio)) - 1));
  return [{ what: ms > 0 ? 'rushing' : 'dragging', percent, strength }, ...offsetFinding(rounds)];
}

function byOneself(rounds: readonly TimedRound[], timing: Timing): readonly Finding[] {
  const limit = allowedTempoPercent(timing.limits);
  const changed = rounds.reduce((sum, { changePercent }) => sum + changePercent, 0);
  const away = rounds.map(({ tempoRatio, linesBpm }, round) => {
    const bpm = tempoRatio * linesBpm;
    return { bpm, percent: tempoChangePercent(bpm, timing.askedBpm(round, bpm)) };
  });
  const off = median(away.map(({ percent }) => percent));
  const bpm = median(away.map((round) => round.bpm)) as Bpm;
  return [
    {
      what: changed > 0 ? 'rushing' : 'dragging',
      percent: Math.abs(changed),
      strength: Math.abs(changed) / limit,
    },
    { what: off > 0 ? 'fast' : 'slow', percent: Math.abs(off), bpm, strength: Math.abs(off) / limit },
  ];
}

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
  spreadMs: number,
  count: number,
  beatSeconds: number,
  limits: Allowance,
): Finding {
  const sure = 1 - 0.9 / Math.sqrt(2 * Math.max(1, count - 1));
  const strength = (Math.max(0, sure) * spreadMs) / allowedSpreadMs(limits, beatSeconds);
  return { what: 'uneven', voice, ms: Milliseconds(spreadMs), strength };
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

function voiceFindings(
  voice: Voice,
  offsets: readonly Offset[],
  { limits, places }: Timing,
): readonly Finding[] {
  if (offsets.length < FEWEST_OF_VOICE) return [];
  const byPlace = groupBy(offsets, ({ pair }) => places.nameOf(pair.due));
  const spreadMs = spreadOf(aboutPlaces(byPlace));
  const beatSeconds = median(offsets.map(({ pair }) => pair.due.beatSeconds));
  const times = placeTimes(byPlace, spreadMs, limits).filter(({ strength }) => strength >= 1);
  return [
    unevenOf(voice, spreadMs, offsets.length, beatSeconds, limits),
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

/** What is to be said of time; what is under the limit too, to be sifted. */
export function timeFindings(rounds: readonly TimedRound[], timing: Timing): readonly Finding[] {
  const offsets = rounds.flatMap((round) => round.offsets);
  const byVoice = groupBy(offsets, ({ pair }) => pair.due.voice);
  const timed = rounds.filter((round) => round.offsets.length >= FEWEST_STROKES);
  const whole =
    timed.length === 0 ? [] : timing.isAlongClick ? alongClick(timed, timing) : byOneself(timed, timing);
  return [...whole, ...[...byVoice].flatMap(([voice, own]) => voiceFindings(voice, own, timing))];
}
