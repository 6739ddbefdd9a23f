/**
 * What drummers do in a bar, by which bar lines are told.
 *
 * Conventions: shares from 0 to 1, less what chance gives; counts of a bar from 0. Source: common practice: the back beat, the
 * hi-hat foot and the skip of the ride fall on the second and fourth beat, in five on two of the second, third, fourth and
 * fifth; the bass drum opens the bar. A samba is counted in two, its foot on the off-beat and its bass drum round the beat.
 */
import type { Voice } from '@shedbook/core';
import { beatsIn, type Counted } from './counted.ts';
import { type PlacedVoice, phaseOf } from './phase.ts';
import { TIME_KEEPERS } from './struck.ts';

/** A stroke so near to a count is on it, in counts. */
const NEAR = 0.12;
/** Fewer strokes tell nothing. */
const FEWEST = 3;
/** Where the skip stroke of a swung ride lies in its beat. */
const SKIP = { from: 0.58, to: 0.85 } as const;

/** A bar of counts, and the counts before the first bar line. */
export interface InBar extends Counted {
  /** Beats before the first bar line: 0 up to the beats of a bar. */
  readonly pickup: number;
}

/** The count of the bar that a place is nearest to. */
export function countAt(at: number, { pickup, inBar }: InBar): number {
  const from = Math.round(at) - pickup;
  return ((from % inBar) + inBar) % inBar;
}

/** Whether a place is on a count. */
export function isOnCount({ at }: PlacedVoice): boolean {
  return Math.abs(at - Math.round(at)) < NEAR;
}

/** Share of a voice's strokes on counts that lies on the wanted ones, less what chance gives; 0 without enough. */
function shareOn(
  placed: readonly PlacedVoice[],
  voices: readonly Voice[],
  wanted: readonly number[],
  by: InBar,
): number {
  const onCount = placed.filter((one) => voices.includes(one.stroke.voice) && isOnCount(one));
  if (onCount.length < FEWEST) return 0;
  const there = onCount.filter(({ at }) => wanted.includes(countAt(at, by))).length;
  return there / onCount.length - wanted.length / by.inBar;
}

/** Share of the skip strokes of the ride, just before a beat, that lie in the wanted beats, less what chance gives. */
function skipsIn(placed: readonly PlacedVoice[], wanted: readonly number[], by: InBar): number {
  const skips = placed.filter((one) => {
    const phase = phaseOf(one);
    return one.stroke.voice === 'ride' && phase > SKIP.from && phase < SKIP.to;
  });
  if (skips.length < FEWEST) return 0;
  const there = skips.filter(({ at }) => wanted.includes(countAt(Math.floor(at), by)));
  return there.length / skips.length - wanted.length / by.inBar;
}

/** On which beats of a bar, counted from 0, back beats may fall: the ways there are, each with its beats. */
const BACK: Readonly<Record<number, readonly (readonly number[])[]>> = {
  2: [[1]],
  3: [[1]],
  4: [[1, 3]],
  5: [[1, 3], [1, 4], [2, 4], [3]],
};
/** The same of the bass drum. */
const BASS: Readonly<Record<number, readonly (readonly number[])[]>> = {
  4: [[0, 2]],
  5: [[0], [0, 2], [0, 3]],
};

/** The ways in which back beats may fall: on every other beat of an even bar, else on any after the first. */
function backBeats(by: InBar): readonly (readonly number[])[] {
  const known = by.groups ? undefined : BACK[by.inBar];
  const beats = beatsIn(by);
  if (known) return known;
  if (beats.length % 2 === 0) return [beats.filter((_, index) => index % 2 === 1)];
  const later = beats.slice(1);
  return [later, ...later.map((beat) => [beat])];
}

/** So many strokes of foot and bass drum show a samba, this share of them at their places. */
const SAMBA = { fewest: 6, share: 0.8, both: 0.25, near: 0.08 } as const;

/** Whether a foot on the off-beat and a bass drum on the beat and just before it are a samba, its second sixteenth left out. */
export function isSamba(placed: readonly PlacedVoice[]): boolean {
  const phasesOf = (voices: readonly Voice[]) =>
    placed.filter(({ stroke }) => voices.includes(stroke.voice)).map(phaseOf);
  const shareNear = (phases: readonly number[], ...places: readonly number[]) =>
    phases.filter((phase) => places.some((place) => Math.abs(phase - place) < SAMBA.near)).length /
    phases.length;
  const [foot, bass, time] = [phasesOf(['hihat-foot']), phasesOf(['bass']), phasesOf(TIME_KEEPERS)];
  if (Math.min(foot.length, bass.length, time.length) < SAMBA.fewest) return false;
  return (
    shareNear(foot, 0.5) >= SAMBA.share &&
    shareNear(bass, 0, 1, 0.75) >= SAMBA.share &&
    Math.min(shareNear(bass, 0, 1), shareNear(bass, 0.75)) >= SAMBA.both &&
    shareNear(time, 0.75) >= SAMBA.both / 2 &&
    shareNear(time, 0.25) < SAMBA.both / 2
  );
}

/** What is known of drummers. */
type Habit = 'first' | 'backBeat' | 'bass' | 'cymbal' | 'foot' | 'skip' | 'samba';

/** What drummers do in a bar: the more the better. @param weights of each habit, in nats */
export function habitsIn(
  placed: readonly PlacedVoice[],
  by: InBar,
  weights: Readonly<Record<Habit, number>>,
): number {
  const back = backBeats(by);
  const low = (by.groups ? undefined : BASS[by.inBar]) ?? [[0]];
  const best = (ways: readonly (readonly number[])[], share: (wanted: readonly number[]) => number) =>
    Math.max(...ways.map(share));
  const first = placed[0]!.at - by.pickup;
  const hasSkips = !by.groups && by.inBar !== 3;
  return (
    weights.first * (Math.abs(first) < NEAR ? 1 : 0) +
    weights.backBeat * best(back, (beats) => shareOn(placed, ['snare', 'rimshot'], beats, by)) +
    weights.foot * best(back, (beats) => shareOn(placed, ['hihat-foot'], beats, by)) +
    weights.bass * best(low, (beats) => shareOn(placed, ['bass'], beats, by)) +
    (hasSkips ? weights.skip * best(back, (beats) => skipsIn(placed, beats, by)) : 0) +
    weights.cymbal * shareOn(placed, ['crash'], [0], by) +
    (by.inBar === 2 && !by.isDotted && isSamba(placed) ? weights.samba : 0)
  );
}
