/**
 * What comes back in several rounds at the same place. A single round leaves it open, since one stroke may always be the
 * ear's; an ear that is wrong is seldom wrong at one place again and again, so each of these rounds has the fault.
 *
 * Conventions: of a whole of several rounds only what was found in it is looked for in each.
 */
import type { WrittenPlace } from '@shedbook/core';
import type { Due } from '../take/due.ts';
import { type HeardRound, latenessIn } from '../take/hearing.ts';
import type { Finding } from '../verdict/finding.ts';

/** In so many rounds a fault comes back. */
const ROUNDS = 2;
/** Of the lateness that the whole has, a round has the same where it has this share. */
const SAME_SHARE = 0.5;

type PlacedFinding = Finding & Required<Pick<Finding, 'voice' | 'places'>>;

function isPlaced(finding: Finding): finding is PlacedFinding {
  const { what, voice, places = [] } = finding;
  return (
    (what === 'missing' || what === 'late' || what === 'early') && voice !== undefined && places.length > 0
  );
}

function keyOf({ bar, beat, slot }: WrittenPlace): string {
  return `${bar}.${beat}.${slot}`;
}

/** What of a round has the fault, by its places, whatever its voice. */
function faulty(round: HeardRound, { what, ms: wholeMs }: PlacedFinding): readonly Due[] {
  if (what === 'missing') return round.match.missed;
  const lateness = latenessIn(round);
  return round.match.pairs.flatMap(({ due, stroke }) => {
    const lateMs = (stroke.seconds - due.seconds - lateness(due)) * 1000;
    const ownMs = what === 'early' ? -lateMs : lateMs;
    return ownMs >= SAME_SHARE * (wholeMs ?? 0) ? [due] : [];
  });
}

/** The places at which a round has a fault of the whole. */
function placesIn(round: HeardRound, finding: PlacedFinding): readonly WrittenPlace[] {
  const asked = new Set(finding.places.map(keyOf));
  return faulty(round, finding)
    .filter(({ voice, asked: { written } }) => voice === finding.voice && asked.has(keyOf(written)))
    .map(({ asked: { written } }) => written);
}

function inRounds(rounds: readonly HeardRound[], finding: PlacedFinding): readonly (Finding | null)[] {
  const found = rounds.map((round) => placesIn(round, finding));
  const keys = found.flat().map(keyOf);
  const comesBack = (place: WrittenPlace) => keys.filter((key) => key === keyOf(place)).length >= ROUNDS;
  return rounds.map(({ due }, index) => {
    const places = (found[index] ?? []).filter(comesBack);
    if (places.length === 0) return null;
    const of = due.filter(({ voice }) => voice === finding.voice).length;
    const counted = finding.what === 'missing' ? { times: places.length, of } : {};
    return { ...finding, ...counted, places, inEveryBar: false };
  });
}

/** What each round has of that which comes back in the whole, in the order of the rounds. */
export function recurringIn(
  rounds: readonly HeardRound[],
  whole: readonly Finding[],
): readonly (readonly Finding[])[] {
  const all = whole.filter(isPlaced).map((finding) => inRounds(rounds, finding));
  return rounds.map((_, index) => all.flatMap((found) => found[index] ?? []));
}

/** The findings of a round with those that come back, each told once. */
export function withRecurring(own: readonly Finding[], back: readonly Finding[]): readonly Finding[] {
  const isTold = ({ what, voice }: Finding) => own.some((one) => one.what === what && one.voice === voice);
  return [...own, ...back.filter((one) => !isTold(one))];
}
