/**
 * Places at which nobody could say whether a limb plays: a soft stroke under a louder drum or crash that is never
 * struck without it. What the louder one sounds like alone is not known then, so a stroke that is lost under it is as
 * likely played as left out. The same holds of a stroke that follows one of its own voice so fast that both are one sound.
 *
 * A foot that closes the hi-hat while the hand strikes it closed moves nothing that sounds: the plates lie on each other
 * already, and both are one pair of them.
 *
 * Conventions: levels as the lesson asks for them, in dB; a ride or a hi-hat, which goes on all along, covers nothing, nor
 * does a low drum, which sounds elsewhere, nor is one covered.
 */
import { groupBy, type Voice } from '@shedbook/core';
import { median } from '@shedbook/signal';
import { kindOf } from '../align/observations.ts';
import type { HeardStroke } from './heard-stroke.ts';
import type { Place } from './places.ts';

/** What is heard through everything: drums of the lowest kind; and the voices that go on all along. */
const LOW = kindOf('bass');
const GOING_ON: readonly Voice[] = ['ride', 'hihat', 'hihat-open', 'hihat-foot'];
/** By so much is a voice softer, in dB, that is covered. */
const SOFTER_DB = 3;
/** This share of the strokes of a voice that covers another one come with a stroke of that one. */
const ALWAYS = 0.9;

/** Whether a voice goes on all along, so that it covers nothing. */
export const isGoingOn = (voice: Voice): boolean => GOING_ON.includes(voice);

/** The moment of a place: what is written together has the same. */
export function momentOf({ takeBar, expected }: Place): string {
  return `${takeBar} ${expected.position.toFixed(6)}`;
}

function levelOf(places: readonly Place[]): number {
  return median(places.map(({ expected }) => expected.stroke.levelDb));
}

/** The moments of a louder voice that hardly sounds without another one; none where it does, or is not louder. */
function coversOf(cover: readonly Place[], own: readonly Place[], moments: ReadonlySet<string>) {
  if (levelOf(cover) - levelOf(own) < SOFTER_DB) return [];
  const together = cover.map(momentOf).filter((moment) => moments.has(moment));
  return together.length >= ALWAYS * cover.length ? together : [];
}

/** The moments at which the hand strikes the hi-hat closed. */
function closedByHand(byVoice: ReadonlyMap<Voice, readonly Place[]>): readonly string[] {
  return (byVoice.get('hihat') ?? []).map(momentOf);
}

/** The places of a voice under a louder one, whether that sounds without it or not. @param places of all voices */
export function placesUnderLouder(places: readonly Place[], voice: Voice): ReadonlySet<Place> {
  const byVoice = groupBy(places, ({ expected }) => expected.voice);
  const own = byVoice.get(voice) ?? [];
  const louder = [...byVoice].flatMap(([other, cover]) =>
    kindOf(other) === LOW || isGoingOn(other) || levelOf(cover) - levelOf(own) < SOFTER_DB
      ? []
      : cover.map(momentOf),
  );
  const moments = new Set(louder);
  return new Set(own.filter((place) => moments.has(momentOf(place))));
}

/** The places of a voice that are covered by others. @param places of all voices */
export function coveredPlaces(places: readonly Place[], voice: Voice): ReadonlySet<Place> {
  const byVoice = groupBy(places, ({ expected }) => expected.voice);
  const own = byVoice.get(voice) ?? [];
  if (kindOf(voice) === LOW || own.length === 0) return new Set();
  const moments = new Set(own.map(momentOf));
  const covers = [...byVoice].flatMap(([other, cover]) =>
    other === voice || kindOf(other) === LOW || isGoingOn(other) ? [] : coversOf(cover, own, moments),
  );
  const covered = new Set([...covers, ...(voice === 'hihat-foot' ? closedByHand(byVoice) : [])]);
  return new Set(own.filter((place) => covered.has(momentOf(place))));
}

/**
 * Strokes of one voice this near to each other, in seconds, are often one to the ear: of a ride at 280 a minute the stroke on
 * the beat, 71 ms after the last triplet, left no onset of its own in any of eight bars.
 */
const ONE_SOUND_SECONDS = 0.08;

/** Of the other places of a voice so many must be heard: of a limb that stays out nothing is hidden. */
const GOES_ON = 0.5;

/** The places of a voice that follow one of its own so soon that its sound may hide them. @param own in order of time */
export function soonAfterOwn(own: readonly Place[], heard: ReadonlySet<Place>): ReadonlySet<Place> {
  const isSoon = (place: Place, i: number) =>
    place.idealSeconds - (own[i - 1]?.idealSeconds ?? Number.NEGATIVE_INFINITY) < ONE_SOUND_SECONDS;
  const soon = own.filter(isSoon);
  const others = own.filter((place, i) => !isSoon(place, i));
  return new Set(others.filter((place) => heard.has(place)).length >= GOES_ON * others.length ? soon : []);
}

/** The strokes with those under louder ones as loud as their voice is elsewhere: how loud they are is not heard there. */
export function levelledUnderOthers(
  strokes: readonly HeardStroke[],
  places: readonly Place[],
): readonly HeardStroke[] {
  const levels = new Map<Place, number>();
  for (const [voice, own] of groupBy(strokes, (stroke) => stroke.voice)) {
    const covered = coveredPlaces(places, voice);
    const open = own.flatMap(({ place, levelDb }) => (place && covered.has(place) ? [] : [levelDb]));
    if (open.length > 0) for (const place of covered) levels.set(place, median(open));
  }
  return strokes.map((stroke) => {
    const usualDb = stroke.place ? levels.get(stroke.place) : undefined;
    return usualDb === undefined ? stroke : { ...stroke, levelDb: usualDb };
  });
}
