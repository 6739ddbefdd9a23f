/**
 * The students that the plans are tried on: what differs from the base, and whether it was seen while tuning. Five were
 * held back to the end: `forgets fast`, `a poor ear`, `another sheet: funk`, `turns cost`, `narrow challenge`.
 */

const BASE = {
  challenge: 0.75,
  challengeWidth: 0.25,
  turning: 0,
  anyTempo: false,
  massing: true,
  plateaus: 0.33,
  breaking: 0.05,
  parts: 0.7,
  frustration: 0.15,
  givesUp: false,
  strict: 0.06,
  lenient: 0.04,
  deaf: 0,
  fading: 1,
  speed: 1,
  attendance: 0.8,
  holidays: [],
  minutes: 20,
  carriesOver: true,
  sheet: 'first-swing',
};

const of = (name, changes = {}, isSeen = false) => ({ name, isSeen, traits: { ...BASE, ...changes } });

/** Every variant. */
export const VARIANTS = [
  of('base', {}, true),
  of('no plateaus', { plateaus: 0 }, true),
  of('easier is better', { challenge: 0.9 }, true),
  of('ten minutes', { minutes: 10 }, true),
  of('gives up', { frustration: 0.35, givesUp: true }, true),
  of('plateaus hold', { plateaus: 0.5, breaking: 0 }, true),
  of('parts are no use', { parts: 0.2 }, true),
  of('harder is better', { challenge: 0.55 }, true),
  of('any tempo teaches', { anyTempo: true }, true),
  of('blocks do no harm', { massing: false }, true),
  of('forgets fast', { fading: 3 }),
  of('a poor ear', { strict: 0.2, lenient: 0.2, deaf: 0.25 }),
  of(
    'misses weeks',
    { attendance: 0.5, holidays: [14, 15, 16, 17, 18, 19, 20, 35, 36, 37, 38, 39, 40, 41] },
    true,
  ),
  of('forty-five minutes', { minutes: 45 }, true),
  of('slow learners', { speed: 0.5 }, true),
  of('nothing carries over', { carriesOver: false }, true),
  of('turns cost', { turning: 8 }),
  of('narrow challenge', { challengeWidth: 0.15 }),
  of('another sheet: bossa', { sheet: 'bossa' }, true),
  of('another sheet: funk', { sheet: 'funk' }),
];
