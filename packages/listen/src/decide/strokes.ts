/**
 * Deciding what was played: each written stroke heard or missed, and what else was struck.
 *
 * Conventions: evidence as in `evidence.ts`; a written stroke is heard when its evidence, less the cost of its
 * distance from the likely place, is over what its voice needs on this kit; an unwritten one needs far more.
 */

import { SHARED_SURFACES, type Voice } from '@shedbook/core';
import { sigmoid } from '@shedbook/signal';
import { isTap } from '../align/brushed.ts';
import type { HeardEvent } from '../detect/events.ts';
import { APART_SECONDS, type Candidate, candidatesOf } from './candidates.ts';
import { coveredPlaces, placesUnderLouder, soonAfterOwn } from './covered.ts';
import type { Evidence } from './evidence.ts';
import { faintPlaces } from './faint.ts';
import type { HeardStroke } from './heard-stroke.ts';
import { maskedPlaces } from './masked.ts';
import { momentsFor, type WrittenMoment, writtenMoments } from './moments.ts';
import type { Place } from './places.ts';
import { FEWEST_SURE, isParted, isShy, isWhole, type Moment, type Playing } from './plays.ts';
import { shadowsOf } from './shadows.ts';
import { SURE_OF_SOFT, softPlaces, withSoftOnes } from './soft-places.ts';
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
  /** The voices that are no guess, however shy their evidence: their places hardly mix with others, or are heard whole. */
  readonly clear: ReadonlySet<Voice>;
  /** The voices that are believed for the score alone: neither look hears them without it. */
  readonly shy: ReadonlySet<Voice>;
}

/** Evidence that an unwritten stroke needs; the evidence knows already what is written. */
const EXTRA = 1.8;
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

/** What is told of a voice by its moments, its places at which it may be lost under others, and its ghost notes. */
interface Told {
  readonly moments: readonly Moment[];
  readonly need: Need;
  readonly hidden: ReadonlySet<Place>;
  readonly soft: ReadonlySet<Place>;
  /** Whether the loud strokes alone tell what the voice needs: its ghost notes may stay out altogether. */
  readonly isByLoud: boolean;
}

/** What a voice needs by all of its places; by the loud ones where these alone show that it plays. */
function tellByLevel(
  one: Evidence,
  written: readonly WrittenMoment[],
  soft: ReadonlySet<Place>,
): Pick<Told, 'moments' | 'need' | 'isByLoud'> {
  const isAccent = one.voice === 'rimshot';
  const moments = momentsFor(one, written);
  const need = needOf(moments, isAccent);
  const byAll = { moments, need, isByLoud: false };
  if (soft.size === 0 || need.playing === 'yes') return byAll;
  const loud = momentsFor(one, written, soft);
  const needOfLoud = needOf(loud, isAccent);
  return needOfLoud.playing === 'yes' ? { moments: loud, need: needOfLoud, isByLoud: true } : byAll;
}

/**
 * What a voice needs. One that plays by all its places is told by them all; else those tell under which it is not covered,
 * if they are enough: of a limb that does not play there none is hidden. Of one that is always covered nobody can say.
 */
function tellVoice(one: Evidence, places: readonly Place[], written: readonly WrittenMoment[]): Told {
  const isAccent = one.voice === 'rimshot';
  const hidden = coveredPlaces(places, one.voice);
  const soft = softPlaces(places.filter(({ expected }) => expected.voice === one.voice));
  const { moments, need, isByLoud } = tellByLevel(one, written, soft);
  if (hidden.size === 0 || need.playing === 'yes') return { moments, need, hidden, soft, isByLoud };
  const bare = momentsFor(one, written, hidden);
  if (bare.filter(({ isOwn }) => isOwn).length < FEWEST_SURE)
    return { moments, need: { ...need, playing: 'perhaps' }, hidden, soft, isByLoud };
  const open = needOf(bare, isAccent);
  return { moments: bare, need: open, hidden: open.playing === 'no' ? new Set() : hidden, soft, isByLoud };
}

/**
 * Of which places it cannot be said whether a stroke was played that was not heard. Of a brush that taps with other limbs alone,
 * and is not heard at all, nobody can say that it stayed out; where it taps by itself something would sound.
 */
function untoldOf(
  { strokes }: Decision,
  own: readonly Place[],
  { hidden, moments }: Told,
  under: UnderOthers,
): (place: Place) => boolean {
  const heard = new Set(strokes.flatMap(({ place }) => place ?? []));
  const lost = under.lost(heard);
  const soon = soonAfterOwn(own, heard);
  const isAlone = moments.some(({ isOwn, others }) => isOwn && others === 0);
  if (heard.size === 0 && !isAlone && own.every(({ expected }) => isTap(expected))) return () => true;
  return (place) => hidden.has(place) || soon.has(place) || lost.has(place);
}

/** What strokes of each voice need, as the events so far tell it. */
export function needsIn(
  events: readonly HeardEvent[],
  evidence: readonly Evidence[],
  places: readonly Place[],
): ReadonlyMap<Voice, Need> {
  const written = writtenMoments(events, places);
  return new Map(evidence.map((one) => [one.voice, tellVoice(one, places, written).need]));
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
  const clear = new Set<Voice>();
  const shy = new Set<Voice>();
  const covered: Place[] = [];
  for (const one of evidence) {
    const own = places.filter((place) => place.expected.voice === one.voice);
    const told = tellVoice(one, places, written);
    const { moments, need, soft } = told;
    playing.set(one.voice, need.playing);
    const plain = candidatesOf(events, one, need.alone);
    const asked = { soft: need.playing === 'yes' ? soft : new Set<Place>(), reachSeconds };
    const candidates = withSoftOnes(plain, events, one, asked);
    const under = underOthers(moments);
    const neededAt = (place: Place) =>
      told.isByLoud && soft.has(place) ? SURE_OF_SOFT : Math.min(need.written, under.neededAt(place));
    const decided = decideVoice(candidates, own, reachSeconds, neededAt);
    if (isParted(moments) || isWhole(moments, decided.missed.length)) clear.add(one.voice);
    if (isShy(moments)) shy.add(one.voice);
    strokes.push(...decided.strokes);
    const faint =
      need.playing === 'yes' ? faintPlaces(moments, placesUnderLouder(places, one.voice)) : new Set();
    const isUnder = untoldOf(decided, own, told, under);
    const isUntold = (place: Place) => faint.has(place) || isUnder(place);
    missed.push(...decided.missed.filter((place) => !isUntold(place)));
    covered.push(...decided.missed.filter(isUntold));
    const taken = decided.strokes.map((stroke) => stroke.timeSeconds);
    for (const { timeSeconds, levelDb, evidence: strength, isOwn } of plain) {
      if (!isOwn || strength < EXTRA || taken.some((time) => Math.abs(time - timeSeconds) < APART_SECONDS))
        continue;
      strokes.push({
        voice: one.voice,
        timeSeconds,
        levelDb,
        place: null,
        confidence: probability(strength, -2),
      });
    }
  }
  const single = withoutDoubles({
    strokes: strokes.toSorted((a, b) => a.timeSeconds - b.timeSeconds),
    missed,
  });
  const shadows = shadowsOf(single.strokes);
  const masked = maskedPlaces(single.strokes, single.missed);
  return {
    missed: single.missed.filter((place) => !masked.has(place)),
    playing,
    clear,
    shy,
    covered: [...covered, ...masked],
    strokes: single.strokes.filter((stroke) => !shadows.has(stroke)),
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
