/**
 * The strokes of a recording without a score: what the sound alone tells.
 *
 * Conventions: seconds; presence as logits; levels K-weighted, in dB re full scale.
 */
import { Seconds, SHARED_SURFACES, VOICES, type Voice } from '@shedbook/core';
import { quantile } from '@shedbook/signal';
import type { HeardStroke } from '../decide/heard-stroke.ts';
import { columnOf } from '../decide/second-look.ts';
import type { HeardEvent } from '../detect/events.ts';
import { measureLevels } from '../measure/voice-levels.ts';
import { isListenedFor, outputOf } from '../network/heard-voices.data.ts';
import type { StruckVoice } from './struck.ts';

/** Presence that a stroke needs, and what a voice must reach now and then to be on the kit at all. */
const NEEDED = 1;
const SURE = 1.5;
const SURE_SHARE = 0.25;
const FEWEST_SURE = 3;
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

function candidatesOf(events: readonly HeardEvent[], free: Float64Array, voice: Voice): readonly Candidate[] {
  const index = outputOf(voice);
  const column = columnOf(free, index);
  const all = events.flatMap((event, e): Candidate[] => {
    const presence = column[e]!;
    if (presence < NEEDED) return [];
    const offsetMs = Math.max(-WIDEST_OFFSET_MS, Math.min(WIDEST_OFFSET_MS, event.offsetMs[index]!));
    const timeSeconds = Seconds(event.timeSeconds + offsetMs / 1000);
    return [{ timeSeconds, voice, levelDb: event.levelDb[index]!, presence }];
  });
  const kept: Candidate[] = [];
  for (const one of all.toSorted((a, b) => b.presence - a.presence))
    if (!kept.some(({ timeSeconds }) => Math.abs(timeSeconds - one.timeSeconds) < APART_SECONDS))
      kept.push(one);
  return kept;
}

function isOnKit(candidates: readonly Candidate[]): boolean {
  const presences = candidates.map(({ presence }) => presence);
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
    .filter(isOnKit);
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
