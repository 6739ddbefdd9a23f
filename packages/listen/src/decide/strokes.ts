/**
 * Deciding what was played: each written stroke heard or missed, and what else was struck.
 *
 * Conventions: evidence as in `evidence.ts`; a written stroke is heard when its evidence, less the cost of its
 * distance from the likely place, is over what its voice needs on this kit; an unwritten one needs far more.
 */

import { SHARED_SURFACES, type Voice } from '@shedbook/core';
import { sigmoid } from '@shedbook/signal';
import type { HeardEvent } from '../detect/events.ts';
import { coveredPlaces, soonAfterOwn } from './covered.ts';
import { type Evidence, outputsOf } from './evidence.ts';
import type { HeardStroke } from './heard-stroke.ts';
import { momentsFor, type WrittenMoment, writtenMoments } from './moments.ts';
import type { Place } from './places.ts';
import { FEWEST_SURE, isParted, type Moment, type Playing } from './plays.ts';
import { shadowsOf } from './shadows.ts';
import { type Need, needOf } from './threshold.ts';
import { type UnderOthers, underOthers } from './under-others.ts';

/** What was decided of a take. */
export interface Decision {
  readonly strokes: readonly HeardStroke[];
  readonly missed: readonly Place[];
  /** Places of which nobody can say whether they were played, since they lie under louder strokes; none when left out. */
  readonly covered?: readonly Place[];
}

/** What was decided of a recording. */
export interface HeardDecision extends Decision {
  /** Whether the limb of each voice plays at all. */
  readonly playing: ReadonlyMap<Voice, Playing>;
  /** The voices whose places hardly mix with others, however shy their evidence. */
  readonly parted: ReadonlySet<Voice>;
}

/** Evidence that an unwritten stroke needs; the evidence knows already what is written. */
const EXTRA = 1.8;
/** What hardly any stroke lies under, on whatever kit and under whatever others: a logit. */
const LEAST = -6;
/** Two strokes of a voice are at least this far apart. */
export const APART_SECONDS = 0.045;

/** A moment at which a voice may have been struck. */
export interface Candidate {
  readonly timeSeconds: number;
  readonly levelDb: number;
  /** A logit. */
  readonly evidence: number;
}

/**
 * The moments at which a voice may have been struck, one for each stroke, strongest evidence kept.
 * @param least evidence of the sound alone that is needed
 */
export function candidatesOf(
  events: readonly HeardEvent[],
  evidence: Evidence,
  least = Number.NEGATIVE_INFINITY,
): readonly Candidate[] {
  const all: Candidate[] = [];
  events.forEach((event, i) => {
    const strength = evidence.logit[i]!;
    const index = evidence.output[i]!;
    if (strength < LEAST || evidence.free[i]! < least) return;
    const offset = Math.max(-25, Math.min(25, event.offsetMs[index]!));
    all.push({
      timeSeconds: event.timeSeconds + offset / 1000,
      levelDb: Math.max(...outputsOf(evidence.voice).map((output) => event.levelDb[output]!)),
      evidence: strength - Math.max(0, Math.abs(offset) - 12) * 0.08,
    });
  });
  const kept: Candidate[] = [];
  for (const candidate of all.toSorted((a, b) => b.evidence - a.evidence)) {
    if (!kept.some((other) => Math.abs(other.timeSeconds - candidate.timeSeconds) < APART_SECONDS))
      kept.push(candidate);
  }
  return kept.toSorted((a, b) => a.timeSeconds - b.timeSeconds);
}

function probability(evidence: number, prior: number): number {
  return sigmoid(evidence + prior);
}

/** One voice: its places and candidates matched in order of fit. */
function decideVoice(
  candidates: readonly Candidate[],
  places: readonly Place[],
  reachSeconds: number,
  neededAt: (place: Place) => number,
): Decision {
  const pairs: { place: number; candidate: number; score: number }[] = [];
  places.forEach((place, p) => {
    candidates.forEach((candidate, c) => {
      const distance = Math.abs(candidate.timeSeconds - place.likelySeconds);
      if (distance > reachSeconds) return;
      pairs.push({
        place: p,
        candidate: c,
        score: candidate.evidence - (distance / (reachSeconds / 2.2)) ** 2 / 2,
      });
    });
  });
  const usedPlaces = new Set<number>();
  const usedCandidates = new Set<number>();
  const strokes: HeardStroke[] = [];
  for (const { place, candidate, score } of pairs.toSorted((a, b) => b.score - a.score)) {
    if (score < neededAt(places[place]!) || usedPlaces.has(place) || usedCandidates.has(candidate)) continue;
    usedPlaces.add(place);
    usedCandidates.add(candidate);
    const { timeSeconds, levelDb, evidence } = candidates[candidate]!;
    const voice = places[place]!.expected.voice;
    strokes.push({
      voice,
      timeSeconds,
      levelDb,
      place: places[place]!,
      confidence: probability(evidence, 1),
    });
  }
  return { strokes, missed: places.filter((_, p) => !usedPlaces.has(p)) };
}

/** What is told of a voice by its moments, and its places at which it may be lost under others. */
interface Told {
  readonly moments: readonly Moment[];
  readonly need: Need;
  readonly hidden: ReadonlySet<Place>;
}

/**
 * What a voice needs. One that plays by all its places is told by them all; else those tell under which it is not covered,
 * if they are enough: of a limb that does not play there none is hidden. Of one that is always covered nobody can say.
 */
function tellVoice(one: Evidence, places: readonly Place[], written: readonly WrittenMoment[]): Told {
  const isAccent = one.voice === 'rimshot';
  const hidden = coveredPlaces(places, one.voice);
  const moments = momentsFor(one, written);
  const need = needOf(moments, isAccent);
  if (hidden.size === 0 || need.playing === 'yes') return { moments, need, hidden };
  const bare = momentsFor(one, written, hidden);
  if (bare.filter(({ isOwn }) => isOwn).length < FEWEST_SURE)
    return { moments, need: { ...need, playing: 'perhaps' }, hidden };
  const open = needOf(bare, isAccent);
  return { moments: bare, need: open, hidden: open.playing === 'no' ? new Set() : hidden };
}

/** Of which places it cannot be said whether a stroke was played that was not heard. */
function untoldOf(
  { strokes }: Decision,
  own: readonly Place[],
  hidden: ReadonlySet<Place>,
  under: UnderOthers,
): (place: Place) => boolean {
  const heard = new Set(strokes.flatMap(({ place }) => place ?? []));
  const lost = under.lost(heard);
  const soon = soonAfterOwn(own, heard);
  return (place) => hidden.has(place) || soon.has(place) || lost.has(place);
}

/** Decides every voice of a take. */
export function decide(
  events: readonly HeardEvent[],
  evidence: readonly Evidence[],
  places: readonly Place[],
  reachSeconds: number,
): HeardDecision {
  const strokes: HeardStroke[] = [];
  const missed: Place[] = [];
  const written = writtenMoments(events, places);
  const playing = new Map<Voice, Playing>();
  const parted = new Set<Voice>();
  const covered: Place[] = [];
  for (const one of evidence) {
    const own = places.filter((place) => place.expected.voice === one.voice);
    const { moments, need, hidden } = tellVoice(one, places, written);
    playing.set(one.voice, need.playing);
    if (isParted(moments)) parted.add(one.voice);
    const candidates = candidatesOf(events, one, need.alone);
    const under = underOthers(moments);
    const neededAt = (place: Place) => Math.min(need.written, under.neededAt(place));
    const decided = decideVoice(candidates, own, reachSeconds, neededAt);
    strokes.push(...decided.strokes);
    const isUntold = untoldOf(decided, own, hidden, under);
    missed.push(...decided.missed.filter((place) => !isUntold(place)));
    covered.push(...decided.missed.filter(isUntold));
    const taken = decided.strokes.map((stroke) => stroke.timeSeconds);
    for (const { timeSeconds, levelDb, evidence: strength } of candidates) {
      if (strength < EXTRA || taken.some((time) => Math.abs(time - timeSeconds) < APART_SECONDS)) continue;
      strokes.push({
        voice: one.voice,
        timeSeconds,
        levelDb,
        place: null,
        confidence: probability(strength, -2),
      });
    }
  }
  const told = withoutDoubles({ strokes: strokes.toSorted((a, b) => a.timeSeconds - b.timeSeconds), missed });
  const shadows = shadowsOf(told.strokes);
  return {
    ...told,
    playing,
    parted,
    covered,
    strokes: told.strokes.filter((stroke) => !shadows.has(stroke)),
  };
}

function isSurer(one: HeardStroke, other: HeardStroke): boolean {
  if ((one.place === null) !== (other.place === null)) return one.place !== null;
  return one.confidence > other.confidence;
}

/** Of two voices of one thing at one moment, the surer; a place is lost with its stroke. */
function withoutDoubles({ strokes, missed }: Decision): Decision {
  const isDouble = (stroke: HeardStroke) => {
    const group = SHARED_SURFACES.find((voices) => voices.includes(stroke.voice));
    return (
      group !== undefined &&
      strokes.some(
        (other) =>
          other.voice !== stroke.voice &&
          group.includes(other.voice) &&
          Math.abs(other.timeSeconds - stroke.timeSeconds) < APART_SECONDS &&
          isSurer(other, stroke),
      )
    );
  };
  const gone = strokes.filter(isDouble);
  return {
    strokes: strokes.filter((stroke) => !gone.includes(stroke)),
    missed: [...missed, ...gone.flatMap((stroke) => stroke.place ?? [])],
  };
}
