/**
 * Ghost notes beside the other strokes of a voice: they are told by themselves. Who leaves them out plays the others all the
 * same, and who plays them is not heard as well there as where the voice is loud.
 *
 * Conventions: levels as the lesson asks for them, in dB; evidence as logits.
 */
import type { HeardEvent } from '../detect/events.ts';
import { APART_SECONDS, type Candidate, candidatesOf } from './candidates.ts';
import type { Evidence } from './evidence.ts';
import type { Place } from './places.ts';

/** By so much is a ghost note softer than the loudest stroke of its voice, in dB: a plain one is 6 under an accent. */
const SOFTER_DB = 10;
/**
 * The evidence with the score that a ghost note needs where the sound alone is not as sure as of loud strokes: of 24 ghost notes
 * under hat and bass drum of a funk the least came to 1.7 where they were played, the most to -0.3 where they were not.
 */
export const SURE_OF_SOFT = 0.8;

/** The places of a voice at which it is far softer than elsewhere. */
export function softPlaces(own: readonly Place[]): ReadonlySet<Place> {
  const levelOf = ({ expected }: Place) => expected.stroke.levelDb;
  const loudest = Math.max(...own.map(levelOf));
  return new Set(own.filter((place) => levelOf(place) < loudest - SOFTER_DB));
}

/** The candidates of a voice that plays, with those for its soft places of which only the score makes sure. */
export function withSoftOnes(
  candidates: readonly Candidate[],
  events: readonly HeardEvent[],
  one: Evidence,
  { soft, reachSeconds }: { readonly soft: ReadonlySet<Place>; readonly reachSeconds: number },
): readonly Candidate[] {
  if (soft.size === 0) return candidates;
  const isNear = (timeSeconds: number, seconds: number, reach: number) =>
    Math.abs(timeSeconds - seconds) < reach;
  const more = candidatesOf(events, one).filter(
    ({ timeSeconds, evidence }) =>
      evidence >= SURE_OF_SOFT &&
      [...soft].some(({ likelySeconds }) => isNear(timeSeconds, likelySeconds, reachSeconds)) &&
      !candidates.some((other) => isNear(timeSeconds, other.timeSeconds, APART_SECONDS)),
  );
  return [...candidates, ...more].toSorted((a, b) => a.timeSeconds - b.timeSeconds);
}
