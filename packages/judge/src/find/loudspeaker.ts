/**
 * Which voices may be the loudspeaker's and not the student's: what the page plays itself comes back through the
 * microphone, exactly in time.
 *
 * Conventions: seconds. Where the ear has told whose a stroke is, that holds; else only evenness tells.
 * Sources: no hand is as even as a loudspeaker: even trained people's strokes scatter by some 2 % of the interval, see
 * `perception/perception.data.ts`.
 */
import { groupBy, type Voice } from '@shedbook/core';
import { median, quantile } from '@shedbook/signal';
import { APART_MS, HUMAN_SPREAD } from '../perception/perception.data.ts';
import type { HeardRound } from '../take/hearing.ts';
import type { Pair } from '../take/match.ts';
import { spreadOf } from '../take/own-pulse.ts';
import { atLeast } from './chance.ts';

/** Nobody plays this evenly. */
const TOO_EVEN_SECONDS = 0.0035;
/** Strokes of two limbs of which so many are no farther apart than this are one sound. */
const ONE_SOUND_SECONDS = 0.004;
const MOSTLY = 0.8;
/** Fewer strokes say nothing about evenness. */
const FEWEST = 4;
/** Strokes this close together are at one moment; so many are needed, and so unlikely must it be that a hand did it. */
const CLOSE_SECONDS = 0.003;
const FEWEST_CLOSE = 10;
const BY_HAND = 0.01;
/** A loudspeaker sounds late: of a voice that lies so far behind all others, this is unlikely enough. */
const BEHIND_SECONDS = APART_MS / 1000;
const BY_LATE_HAND = 0.05;
/** One hand in a hundred is more even than this many standard normal deviates say. */
const EVEN_DEVIATES = 2.326;
/** What a median of distances is worth of as many squares: its efficiency beside the standard deviation. */
const MEDIAN_EFFICIENCY = 0.37;
const FEWEST_MEDIAN = 10;

/** A loudspeaker is on time: a voice this far from where the others are is no loudspeaker's. */
const ELSEWHERE_SECONDS = 0.04;

/** How late strokes are in the middle, in seconds. */
function middleOf(pairs: readonly Pair[]): number {
  return median(pairs.map(({ due, stroke }) => stroke.seconds - due.seconds));
}

/**
 * Whether a voice lies beside all others, early or late: a student's, since whatever plays the model plays all of it
 * at its time.
 */
export function isBesideOthers(voice: Voice, rounds: readonly HeardRound[]): boolean {
  const pairs = rounds.flatMap(({ match }) => match.pairs);
  const own = pairs.filter(({ due }) => due.voice === voice);
  const others = pairs.filter(({ due }) => due.voice !== voice);
  if (own.length < FEWEST || others.length < FEWEST) return false;
  return Math.abs(middleOf(own) - middleOf(others)) > ELSEWHERE_SECONDS;
}

/** The strokes with nothing else at the same moment. */
export function aloneIn(pairs: readonly Pair[], all: readonly Pair[]): readonly Pair[] {
  return pairs.filter((pair) => !all.some((other) => isTogether(pair, other)));
}

function isTogether(pair: Pair, other: Pair): boolean {
  if (other.due.voice === pair.due.voice) return false;
  return Math.abs(other.due.seconds - pair.due.seconds) < other.due.reachSeconds / 4;
}

/** Whether strokes come to the millisecond with those of one other voice: one sound, taken for two. */
export function isOneSound(pairs: readonly Pair[], all: readonly Pair[]): boolean {
  const away = new Map<Voice, number[]>();
  for (const pair of pairs) {
    for (const other of all.filter((each) => isTogether(pair, each))) {
      const seconds = Math.abs(other.stroke.seconds - pair.stroke.seconds);
      away.set(other.due.voice, [...(away.get(other.due.voice) ?? []), seconds]);
    }
  }
  return [...away.values()].some((own) => own.length >= FEWEST && quantile(own, MOSTLY) < ONE_SOUND_SECONDS);
}

/** The greatest number of some moments that lie within a hair's breadth of each other. */
function closest(seconds: readonly number[]): number {
  const sorted = seconds.toSorted((a, b) => a - b);
  let from = 0;
  let most = 0;
  sorted.forEach((at, index) => {
    while (at - (sorted[from] ?? at) > CLOSE_SECONDS) from += 1;
    most = Math.max(most, index - from + 1);
  });
  return most;
}

/**
 * How likely a hand with a spread strikes so many of its strokes within a hair's breadth: the scan statistic by
 * Bonferroni's bound, with the chance of the middle of a normal distribution, which is the greatest.
 */
function byHand(most: number, count: number, spreadSeconds: number): number {
  const chance = Math.min(0.99, CLOSE_SECONDS / (Math.sqrt(2 * Math.PI) * spreadSeconds));
  return count * atLeast(most, count, chance);
}

/** The spread that a student's hand has here: that of the other limbs, never less than trained hands reach. */
function handSpread(own: readonly Pair[], all: readonly Pair[]): number {
  const trained = HUMAN_SPREAD.trained * median(own.map(({ due }) => due.asked.intervalSeconds));
  const others = [...groupBy(all, ({ due }) => due.voice).values()]
    .filter((pairs) => pairs[0]?.due.voice !== own[0]?.due.voice && pairs.length >= FEWEST)
    .map((pairs) => spreadOf(pairs.map(({ lateSeconds }) => lateSeconds)))
    .filter((spread) => spread >= TOO_EVEN_SECONDS);
  const beat = HUMAN_SPREAD.trained * median(own.map(({ due }) => due.beatSeconds));
  return others.length === 0 ? trained : Math.max(trained, Math.min(beat, median(others)));
}

/**
 * The spread under which one in a hundred takes of a hand falls, by the chi-square distribution as Wilson and Hilferty
 * approximate it (PNAS 17(12), 1931): a few strokes are even by chance.
 */
function leastSpread(handSeconds: number, count: number): number {
  const freedom = (count - 1) * (count < FEWEST_MEDIAN ? 1 : MEDIAN_EFFICIENCY);
  const part = 2 / (9 * freedom);
  return handSeconds * Math.max(0, 1 - part - EVEN_DEVIATES * Math.sqrt(part)) ** 1.5;
}

/**
 * Whether strokes are too even for a hand: those by themselves, where there are enough of them; or so many of them to
 * the millisecond that no hand like the student's does it, where the student's other limbs drag the rest along.
 */
function isTooEven(pairs: readonly Pair[], all: readonly Pair[]): boolean {
  const alone = aloneIn(pairs, all);
  const told = (alone.length >= FEWEST ? alone : pairs).map(({ lateSeconds }) => lateSeconds);
  if (told.length < FEWEST) return false;
  const hand = handSpread(pairs, all);
  if (spreadOf(told) < Math.min(TOO_EVEN_SECONDS, leastSpread(hand, told.length))) return true;
  if (told.length < FEWEST_CLOSE) return false;
  const others = all.filter(({ due }) => due.voice !== pairs[0]?.due.voice);
  const isBehind = others.length >= FEWEST && middleOf(pairs) - middleOf(others) > BEHIND_SECONDS;
  return byHand(closest(told), told.length, hand) < (isBehind ? BY_LATE_HAND : BY_HAND);
}

/**
 * Voices whose strokes may be the loudspeaker's: those that are too even; and once it is known by these that the
 * loudspeaker is heard, those that come with another voice to the millisecond. Without that, a student's own limbs
 * would be doubted, which an ear hears closer together than they are.
 * @param sounding the voices that the page plays
 */
export function loudspeakerVoices(
  rounds: readonly HeardRound[],
  sounding: readonly Voice[],
): ReadonlySet<Voice> {
  const pairs = rounds.flatMap(({ match }) => match.pairs);
  const byVoice = groupBy(pairs, ({ due }) => due.voice);
  const played = sounding.filter((voice) => byVoice.has(voice) && !isBesideOthers(voice, rounds));
  const own = (voice: Voice) => byVoice.get(voice) ?? [];
  const even = played.filter((voice) => isTooEven(own(voice), pairs));
  if (even.length === 0) return new Set();
  return new Set(played.filter((voice) => even.includes(voice) || isOneSound(own(voice), pairs)));
}
