/**
 * The strokes of a recording without a score: what the sound alone tells.
 *
 * Conventions: seconds; presence as logits; levels K-weighted, in dB re full scale.
 */
import { Seconds, SHARED_SURFACES, VOICES, type Voice } from '@shedbook/core';
import { mean, quantile } from '@shedbook/signal';
import type { HeardStroke } from '../decide/heard-stroke.ts';
import { columnOf } from '../decide/second-look.ts';
import type { HeardEvent } from '../detect/events.ts';
import { measureLevels } from '../measure/voice-levels.ts';
import { HEARD_COUNT, isListenedFor, outputOf } from '../network/heard-voices.data.ts';
import { type StruckVoice, TIME_KEEPERS } from './struck.ts';

/** Presence that a stroke needs, and what a voice must reach now and then to be on the kit at all. */
const NEEDED = 1;
const SURE = 1.5;
const SURE_SHARE = 0.25;
const FEWEST_SURE = 3;
/**
 * A kit may make a voice that keeps time sound shy throughout. Its strokes and all other moments gather round two middles:
 * where these are so far apart, logits, with hardly any moment between, what is nearer to the upper one was struck, down to so
 * little presence; so high that one must lie, and so many strokes it must have.
 */
const SHY = { apart: 5, between: 0.2, middle: -1, fewest: 8, least: -1.5 } as const;
/** Presence under this tells no more. */
const NONE = -9;
const APART_SECONDS = 0.045;
const WIDEST_OFFSET_MS = 25;
/** Voices that one hand plays: of two that come together only the likelier was struck. */
const ALIKE: readonly (readonly Voice[])[] = [
  ...SHARED_SURFACES,
  ['ride', 'hihat', 'hihat-open'],
  ['tom-low', 'bass'],
  ['tom-high', 'tom-mid', 'tom-low'],
];

interface Candidate extends StruckVoice {
  readonly presence: number;
}

/** The middles of two gatherings of numbers: each is of what lies nearer to it. */
function twoMiddles(values: readonly number[]): readonly [number, number] {
  let [low, high] = [Math.min(...values), Math.max(...values)];
  for (let round = 0; round < 8; round += 1) {
    const edge = (low + high) / 2;
    low = mean(values.filter((value) => value < edge));
    high = mean(values.filter((value) => value >= edge));
  }
  return [low, high];
}

/** By how much shyer than elsewhere the strokes of a voice that keeps time are on this kit, a logit from 0. */
function shynessOf(column: Float64Array, voice: Voice): number {
  const values = [...column].map((value) => Math.max(NONE, value));
  if (!TIME_KEEPERS.includes(voice) || values.length === 0) return 0;
  const [low, high] = twoMiddles(values);
  const edge = (low + high) / 2;
  const upper = values.filter((value) => value >= edge).length;
  const isBetween = (value: number) => Math.abs(value - edge) < (high - low) / 6;
  const isParted = high - low >= SHY.apart && values.filter(isBetween).length < SHY.between * upper;
  if (!isParted || high < SHY.middle || upper < SHY.fewest) return 0;
  return Math.max(0, NEEDED - Math.max(SHY.least, edge));
}

/** Candidates for the strokes of a voice, and how shy it is. */
interface Found {
  readonly kept: readonly Candidate[];
  readonly shyness: number;
}

/** Voices of the hand's drums and crashes, under which what is shy may be a part of their sound. */
const OVER: readonly Voice[] = ['snare', 'rimshot', 'sidestick', 'crash'];

/** Whether a drum or crash is heard plainly near a moment. */
function claimedIn(events: readonly HeardEvent[], free: Float64Array) {
  const over = OVER.map(outputOf);
  const claimed = events.flatMap(({ timeSeconds }, e) =>
    over.some((index) => free[e * HEARD_COUNT + index]! >= NEEDED) ? [timeSeconds] : [],
  );
  return (seconds: number) => claimed.some((other) => Math.abs(other - seconds) < APART_SECONDS);
}

function candidatesOf(events: readonly HeardEvent[], free: Float64Array, voice: Voice): Found {
  const index = outputOf(voice);
  const column = columnOf(free, index);
  const shyness = shynessOf(column, voice);
  const isClaimed = shyness > 0 ? claimedIn(events, free) : () => false;
  const all = events.flatMap((event, e): Candidate[] => {
    const presence = column[e]!;
    if (presence < NEEDED - shyness || (presence < NEEDED && isClaimed(event.timeSeconds))) return [];
    const offsetMs = Math.max(-WIDEST_OFFSET_MS, Math.min(WIDEST_OFFSET_MS, event.offsetMs[index]!));
    const timeSeconds = Seconds(event.timeSeconds + offsetMs / 1000);
    return [{ timeSeconds, voice, levelDb: event.levelDb[index]!, presence }];
  });
  const kept: Candidate[] = [];
  for (const one of all.toSorted((a, b) => b.presence - a.presence))
    if (!kept.some(({ timeSeconds }) => Math.abs(timeSeconds - one.timeSeconds) < APART_SECONDS))
      kept.push(one);
  return { kept, shyness };
}

function isOnKit({ kept, shyness }: Found): boolean {
  const presences = kept.map(({ presence }) => presence + shyness);
  return (
    presences.filter((presence) => presence > SURE).length >= FEWEST_SURE &&
    quantile(presences, 1 - SURE_SHARE) > SURE
  );
}

function isBeaten(one: Candidate, all: readonly Candidate[]): boolean {
  const rivals = ALIKE.filter((group) => group.includes(one.voice)).flat();
  return all.some(
    (other) =>
      other.voice !== one.voice &&
      rivals.includes(other.voice) &&
      Math.abs(other.timeSeconds - one.timeSeconds) < APART_SECONDS &&
      other.presence > one.presence,
  );
}

/** The strokes of a recording, in order of time. @param free presence of every voice at every event */
export function strokesOf(events: readonly HeardEvent[], free: Float64Array): readonly StruckVoice[] {
  const byVoice = VOICES.filter(isListenedFor)
    .map((voice) => candidatesOf(events, free, voice))
    .filter(isOnKit)
    .map(({ kept }) => kept);
  const all = byVoice.flat().toSorted((a, b) => a.timeSeconds - b.timeSeconds);
  const near = (one: Candidate) =>
    all.filter(({ timeSeconds }) => Math.abs(timeSeconds - one.timeSeconds) < APART_SECONDS);
  const struck = all.filter((one) => !isBeaten(one, near(one)));
  const heard = struck.map(
    ({ timeSeconds, voice, levelDb }): HeardStroke => ({
      timeSeconds,
      voice,
      levelDb,
      place: null,
      confidence: 1,
    }),
  );
  return measureLevels(events, heard).map(({ timeSeconds, voice, levelDb }) => ({
    timeSeconds: Seconds(timeSeconds),
    voice,
    levelDb,
  }));
}
