/**
 * How well beats explain what was struck: where strokes lie in them, how bars come round, and what drummers do.
 *
 * Conventions: costs in nats, about: less is better. A beat is what the meter counts; bars from the first beat on.
 * Sources: people prefer a pulse of about 100 a minute (D. Moelants, ICMPC 2002); the rest is common practice: time is
 * kept in about two strokes a beat; the back beat, the hi-hat foot and the skip of the ride fall on the second and fourth;
 * the bass drum opens the bar, and a take begins with one. The weights are ours, set on the demo's lessons as somebody
 * scattered plays them; `internal/listen-lab/MEASURED.md` says what was measured on others.
 */
import type { SwingRatio, Voice } from '@shedbook/core';
import { offBeatPhase } from '@shedbook/core';
import { beatSecondsOf, placeIn } from './phase.ts';
import { type StruckVoice, TIME_KEEPERS } from './struck.ts';

/** A pulse that people prefer, and how far from it others lie, in octaves. */
const PREFERRED = { bpm: 104, octaves: 0.65 } as const;
/** Strokes a beat of the voice that keeps time. */
const TIME_KEEPING = { rate: 1.75, octaves: 0.75 } as const;

/** Places inside a beat, and what a stroke there costs beside one on the beat. */
const PLACES: readonly (readonly [number, number])[] = [
  [0, 0],
  [1, 0],
  [1 / 2, 0.5],
  [1 / 3, 0.9],
  [2 / 3, 0.6],
  [1 / 4, 1.2],
  [3 / 4, 1.2],
  [1 / 6, 2],
  [5 / 6, 2],
];
/** Where the skip stroke of a swung ride lies in its beat. */
const SKIP = { from: 0.58, to: 0.85 } as const;
/** Furthest that a stroke is counted from a place, in nats. */
const LOST = 4;
/** Spread of strokes about their place, in seconds. */
const SPREAD_SECONDS = 0.014;

const WEIGHTS = {
  places: 6,
  preferred: 1,
  timeKeeping: 1.5,
  round: 9,
  empty: 2,
  first: 3,
  backBeat: 3,
  bass: 1.5,
  cymbal: 1,
  foot: 2.5,
  skip: 2.5,
} as const;

/** A stroke with its place. */
export interface PlacedVoice {
  readonly stroke: StruckVoice;
  /** In beats from the first one. */
  readonly at: number;
}

/** What explains a take. */
export interface Explained {
  readonly beats: readonly number[];
  /** How many beats a bar has. */
  readonly inBar: number;
  /** Beats before the first bar line: 0 up to the beats of a bar. */
  readonly pickup: number;
  /** How little it explains, in nats; no unit. */
  readonly cost: number;
}

/** The strokes with their places. */
export function placeAll(beats: readonly number[], strokes: readonly StruckVoice[]): readonly PlacedVoice[] {
  return strokes.map((stroke) => ({ stroke, at: placeIn(beats, stroke.timeSeconds) }));
}

function costOfPlaces(placed: readonly PlacedVoice[], beatSeconds: number, swing: SwingRatio | null): number {
  const spread = Math.max(0.02, SPREAD_SECONDS / beatSeconds);
  const places = swing ? [...PLACES, [offBeatPhase(swing.ratio), 0.5] as const] : PLACES;
  const costs = placed.map(({ at }) => {
    const phase = at - Math.floor(at);
    const least = places.reduce(
      (most, [place, cost]) => Math.min(most, ((phase - place) / spread) ** 2 / 2 + cost),
      Number.POSITIVE_INFINITY,
    );
    return Math.min(LOST, least);
  });
  return costs.reduce((sum, cost) => sum + cost, 0) / Math.max(1, costs.length);
}

function octaves(ratio: number, width: number): number {
  return (Math.log2(ratio) / width) ** 2 / 2;
}

function rateOf(placed: readonly PlacedVoice[], beats: number): number | null {
  const kept = placed.filter(({ stroke }) => TIME_KEEPERS.includes(stroke.voice)).length;
  return kept < beats / 4 ? null : kept / beats;
}

/** Share of strokes that come again some beats later, as voices at sixteenths or triplets of a beat. */
function comesRound(placed: readonly PlacedVoice[], inBar: number, beats: number): number {
  const key = (voice: Voice, at: number) => `${voice} ${Math.round(at * 12)}`;
  const all = new Set(
    placed.flatMap(({ stroke, at }) => [-1, 0, 1].map((off) => key(stroke.voice, at + off / 12))),
  );
  const before = placed.filter(({ at }) => at < beats - inBar - 0.25);
  if (before.length === 0) return 0;
  return before.filter(({ stroke, at }) => all.has(key(stroke.voice, at + inBar))).length / before.length;
}

/** Share of a voice's strokes on beats that lies on some of them, less what chance gives; 0 without enough. */
function shareOn(
  placed: readonly PlacedVoice[],
  voices: readonly Voice[],
  isWanted: (beat: number) => boolean,
  by: { readonly pickup: number; readonly inBar: number },
): number {
  const onBeat = placed.filter(
    ({ stroke, at }) => voices.includes(stroke.voice) && Math.abs(at - Math.round(at)) < 0.12,
  );
  if (onBeat.length < 3) return 0;
  const beatOf = ({ at }: PlacedVoice) => {
    const from = Math.round(at) - by.pickup;
    return ((from % by.inBar) + by.inBar) % by.inBar;
  };
  const wanted = Array.from({ length: by.inBar }, (_, beat) => beat).filter(isWanted).length / by.inBar;
  return onBeat.filter((one) => isWanted(beatOf(one))).length / onBeat.length - wanted;
}

/** Share of the skip strokes of the ride, just before a beat, that lie in some beats, less what chance gives. */
function skipsIn(
  placed: readonly PlacedVoice[],
  isWanted: (beat: number) => boolean,
  by: { readonly pickup: number; readonly inBar: number },
): number {
  const skips = placed.filter(({ stroke, at }) => {
    const phase = at - Math.floor(at);
    return stroke.voice === 'ride' && phase > SKIP.from && phase < SKIP.to;
  });
  if (skips.length < 3) return 0;
  const wanted = skips.filter(({ at }) => {
    const from = Math.floor(at) - by.pickup;
    return isWanted(((from % by.inBar) + by.inBar) % by.inBar);
  });
  return wanted.length / skips.length - 1 / 2;
}

/** What drummers do in a bar: the more the better. */
function habits(placed: readonly PlacedVoice[], pickup: number, inBar: number): number {
  const by = { pickup, inBar };
  const even = inBar % 2 === 0;
  const isBack = (beat: number) => (even ? beat % 2 === 1 : beat === 1);
  const isFirst = (beat: number) => beat === 0;
  const first = placed[0]!.at - pickup;
  return (
    WEIGHTS.first * (Math.abs(first) < 0.12 ? 1 : 0) +
    WEIGHTS.backBeat * shareOn(placed, ['snare', 'rimshot'], isBack, by) +
    WEIGHTS.foot * shareOn(placed, ['hihat-foot'], isBack, by) +
    WEIGHTS.bass * shareOn(placed, ['bass'], (beat) => (inBar === 4 ? beat % 2 === 0 : isFirst(beat)), by) +
    (even ? WEIGHTS.skip * skipsIn(placed, isBack, by) : 0) +
    WEIGHTS.cymbal * shareOn(placed, ['crash'], isFirst, by)
  );
}

/** How the bar of a hypothesis is chosen. */
export interface Wanted {
  /** How many beats a bar may have. */
  readonly inBar: readonly number[];
  readonly swing: SwingRatio | null;
  /** Beats a minute that are preferred where the take leaves it open. */
  readonly bpm?: number;
}

/** The best bars of some beats. */
export function explain(
  beats: readonly number[],
  strokes: readonly StruckVoice[],
  wanted: Wanted,
): Explained {
  const placed = placeAll(beats, strokes);
  const seconds = beatSecondsOf(beats);
  const rate = rateOf(placed, beats.length);
  const onBeats = new Set(
    placed.flatMap(({ at }) => (Math.abs(at - Math.round(at)) < 0.12 ? [Math.round(at)] : [])),
  );
  const base =
    WEIGHTS.places * costOfPlaces(placed, seconds, wanted.swing) +
    (wanted.bpm === undefined
      ? WEIGHTS.preferred * octaves(60 / seconds / PREFERRED.bpm, PREFERRED.octaves) +
        (rate === null ? 0 : WEIGHTS.timeKeeping * octaves(rate / TIME_KEEPING.rate, TIME_KEEPING.octaves))
      : 0) +
    WEIGHTS.empty * (1 - Math.min(1, onBeats.size / beats.length));
  const bars = wanted.inBar.flatMap((inBar) => {
    const round = WEIGHTS.round * comesRound(placed, inBar, beats.length);
    // A bar of four is the usual one.
    const usual = inBar === 4 ? 0 : 0.7;
    return Array.from({ length: inBar }, (_, pickup) => ({
      beats,
      inBar,
      pickup,
      cost: base - round + usual - habits(placed, pickup, inBar),
    }));
  });
  return bars.reduce((best, one) => (one.cost < best.cost ? one : best));
}
