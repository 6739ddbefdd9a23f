/**
 * The moments of a score as they sound for one voice: where it is written, and where only others are.
 *
 * Conventions: seconds; the evidence of a moment is the highest near it.
 */
import type { Voice } from '@shedbook/core';
import type { HeardEvent } from '../detect/events.ts';
import { outputOf } from '../network/heard-voices.data.ts';
import type { Evidence } from './evidence.ts';
import type { Place } from './places.ts';
import type { Moment } from './plays.ts';

/** An event this near to a written place is of it; places farther apart than twice that have nothing in common. */
const NEAR_SECONDS = 0.04;

/** Voices that sound so much like each other that where one is written says nothing of whether another plays. */
const ALIKE: readonly (readonly Voice[])[] = [
  ['tom-high', 'tom-mid', 'tom-low'],
  ['tom-low', 'bass'],
  ['snare', 'rimshot', 'sidestick'],
  ['hihat', 'hihat-open'],
];

/** The bits of the voices that sound like one. */
function bitsAlike(voice: Voice): number {
  const alike = ALIKE.filter((group) => group.includes(voice)).flat();
  return alike.reduce((bits, other) => (other === voice ? bits : bits | (1 << outputOf(other))), 0);
}

/** A moment at which something is written. */
export interface WrittenMoment {
  readonly seconds: number;
  /** One bit for each voice that is written there. */
  readonly voices: number;
  readonly places: readonly Place[];
  /** Index of the first event near it, from 0. */
  readonly from: number;
  /** Index of the first event that no longer is, from 0. */
  readonly to: number;
}

const bitOf = (place: Place): number => 1 << outputOf(place.expected.voice);

/** Every moment at which something is written. @param places of all voices, in order of time */
export function writtenMoments(
  events: readonly HeardEvent[],
  places: readonly Place[],
): readonly WrittenMoment[] {
  const found: { seconds: number; voices: number; places: Place[] }[] = [];
  for (const place of places) {
    const last = found.at(-1);
    if (last && place.likelySeconds - last.seconds <= NEAR_SECONDS) {
      last.voices |= bitOf(place);
      last.places.push(place);
    } else found.push({ seconds: place.likelySeconds, voices: bitOf(place), places: [place] });
  }
  let from = 0;
  return found.map(({ seconds, voices, places: of }) => {
    while (from < events.length && events[from]!.timeSeconds < seconds - NEAR_SECONDS) from += 1;
    let to = from;
    while (to < events.length && events[to]!.timeSeconds <= seconds + NEAR_SECONDS) to += 1;
    return { seconds, voices, places: of, from, to };
  });
}

function highest(values: Float64Array, { from, to }: WrittenMoment): number {
  let most = Number.NEGATIVE_INFINITY;
  for (let i = from; i < to; i += 1) most = Math.max(most, values[i]!);
  return most;
}

function placeIn({ places }: WrittenMoment, voice: Voice): Pick<Moment, 'place'> {
  const place = places.find(({ expected }) => expected.voice === voice);
  return place ? { place } : {};
}

/**
 * The moments as they sound for one voice; those too near to one of its own are left out, and those of others at which a
 * voice is written that sounds like it.
 * @param covered places of the voice that tell nothing of it
 */
export function momentsFor(
  { voice, free, first, logit }: Evidence,
  written: readonly WrittenMoment[],
  covered: ReadonlySet<Place> = new Set(),
): readonly Moment[] {
  const bit = 1 << outputOf(voice);
  const alike = bitsAlike(voice);
  return written.flatMap((moment, index): Moment[] => {
    const isOwn = (moment.voices & bit) !== 0;
    const isBesideOwn = [written[index - 1], written[index + 1]].some(
      (other) =>
        other && (other.voices & bit) !== 0 && Math.abs(other.seconds - moment.seconds) <= 2 * NEAR_SECONDS,
    );
    if (!isOwn && (isBesideOwn || (moment.voices & alike) !== 0)) return [];
    if (isOwn && moment.places.some((place) => covered.has(place))) return [];
    return [
      {
        isOwn,
        others: moment.voices & ~bit,
        free: highest(free, moment),
        early: highest(first, moment),
        told: highest(logit, moment),
        ...placeIn(moment, voice),
      },
    ];
  });
}
