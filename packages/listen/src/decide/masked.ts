/**
 * Strokes that one of another limb may have masked: a voice that plays elsewhere and lies, as it sounds there, far under
 * what sounds at the same moment. A telephone hears next to nothing of a feathered bass drum but its click, and nothing of
 * that under a back beat.
 *
 * Conventions: levels in dB as they were heard in the take; a ride or a hi-hat masks nothing. Where the voice was mostly heard
 * under the like, what was not heard was left out.
 */
import { groupBy } from '@shedbook/core';
import { median } from '@shedbook/signal';
import { isGoingOn, momentOf } from './covered.ts';
import type { HeardStroke } from './heard-stroke.ts';
import type { Place } from './places.ts';

/**
 * By so much does a stroke lie under another that masks it, in dB: of a noise over all 24 critical bands one holds a 24th,
 * 14 dB less than the whole (E. Zwicker, J. Acoust. Soc. Am. 33(2), 1961), and what is softer there than that is not heard in it.
 */
const MASKED_DB = 14;
/** Under this share of what is under the like, a voice is mostly not heard there. */
const MOSTLY = 0.5;
/** Of its other places so many must be heard: of a limb that stays out nothing is masked. */
const GOES_ON = 0.5;

/** The missed places at which a stroke may be masked. @param missed places of all voices that were not heard */
export function maskedPlaces(strokes: readonly HeardStroke[], missed: readonly Place[]): ReadonlySet<Place> {
  const atMoment = groupBy(
    strokes.filter(({ place, voice }) => place && !isGoingOn(voice)),
    ({ place }) => momentOf(place as Place),
  );
  const heardOf = groupBy(
    strokes.filter(({ place }) => place),
    ({ voice }) => voice,
  );
  const masked = [...groupBy(missed, ({ expected }) => expected.voice)].flatMap(([voice, lost]) => {
    const heard = heardOf.get(voice) ?? [];
    const levelDb = median(heard.map((stroke) => stroke.levelDb));
    const isUnder = (place: Place) =>
      (atMoment.get(momentOf(place)) ?? []).some(
        (stroke) => stroke.voice !== voice && stroke.levelDb - levelDb >= MASKED_DB,
      );
    const lostUnder = lost.filter(isUnder);
    const heardUnder = heard.filter(({ place }) => place && isUnder(place)).length;
    const open = { heard: heard.length - heardUnder, lost: lost.length - lostUnder.length };
    const isMasked = heardUnder < MOSTLY * (heardUnder + lostUnder.length);
    return isMasked && open.heard > 0 && open.heard >= GOES_ON * (open.heard + open.lost) ? lostUnder : [];
  });
  return new Set(masked);
}
