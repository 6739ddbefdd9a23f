/**
 * How well beats explain what was struck: where strokes lie in them, how bars come round, and what drummers do.
 *
 * Conventions: costs in nats, about: less is better. A beat is what the meter counts; bars from the first beat on.
 * Sources: people prefer a pulse of about 100 a minute (D. Moelants, ICMPC 2002); the rest is common practice: time is
 * kept in about two strokes a beat; the back beat, the hi-hat foot and the skip of the ride fall on the second and fourth;
 * the bass drum opens the bar, accents fall on beats, and a take begins with one; where every third of a beat is kept the
 * beat is dotted, and goes slower. Of beats of two and three eighths the eighths are counted, and a beat begins each group.
 * The weights are ours, set on the demo's lessons as somebody
 * scattered plays them; `internal/listen-lab/MEASURED.md` says what was measured on others.
 */
import { ACCENT_DB, offBeatPhase, type SwingRatio, type Voice } from '@shedbook/core';
import { mean } from '@shedbook/signal';
import { beatsIn, type Counted } from './counted.ts';
import { countAt, habitsIn, type InBar, isOnCount, isSamba } from './habits.ts';
import { beatSecondsOf, type PlacedVoice, phaseOf, placeIn } from './phase.ts';
import { type StruckVoice, TIME_KEEPERS } from './struck.ts';

/** A pulse that people prefer, and how far from it others lie, in octaves. */
const PREFERRED = { bpm: 104, dottedBpm: 72, octaves: 0.65 } as const;
/** Strokes a beat of the voice that keeps time. */
const TIME_KEEPING = { rate: 1.75, dottedRate: 3, octaves: 0.75 } as const;

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
/** The same inside a dotted beat that is kept in three. */
const DOTTED_PLACES = PLACES.map(([place, cost]): readonly [number, number] => [
  place,
  Math.abs(place * 3 - Math.round(place * 3)) < 1e-6 ? Math.min(cost, 0.5) : Math.max(cost, 1.2),
]);
/** Of the beats that are kept so many must be kept in three for a dotted beat, a stroke so near to its third. */
const IN_THREE = { share: 0.6, near: 0.1 } as const;
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
  samba: 6,
  accents: 2,
} as const;
/** What a stroke on an inner eighth of a beat of two or three costs beside one on the beat. */
const INSIDE_GROUP = 0.5;
/** So many strokes on beats and off them tell where accents fall, and so many dB between the two are all. */
const ACCENTS = { fewest: 6, most: ACCENT_DB } as const;
/** What it costs to count bars so; one of four is the usual one. */
const USUAL = { plain: { 2: 0.7, 3: 0.7, 4: 0, 5: 1 }, dotted: { 2: 0, 3: 0.7, 4: 0.2 }, groups: 2 } as const;

/** What explains a take. */
export interface Explained extends Counted {
  readonly beats: readonly number[];
  /** Beats before the first bar line: 0 up to the beats of a bar. */
  readonly pickup: number;
  /** How little it explains, in nats; no unit. */
  readonly cost: number;
}

/** The strokes with their places. */
export function placeAll(beats: readonly number[], strokes: readonly StruckVoice[]): readonly PlacedVoice[] {
  return strokes.map((stroke) => ({ stroke, at: placeIn(beats, stroke.timeSeconds) }));
}

function costOfPlaces(
  placed: readonly PlacedVoice[],
  beatSeconds: number,
  { isDotted, swing }: { readonly isDotted: boolean; readonly swing: SwingRatio | null },
): number {
  const spread = Math.max(0.02, SPREAD_SECONDS / beatSeconds);
  const plain = isDotted ? DOTTED_PLACES : PLACES;
  const places = swing ? [...plain, [offBeatPhase(swing.ratio), 0.5] as const] : plain;
  const costs = placed.map(({ at }) => {
    const phase = phaseOf({ at });
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

/** Share of the beats that are kept in which both inner thirds are struck. */
function keptInThree(placed: readonly PlacedVoice[]): number {
  const beats = new Map<number, Set<number>>();
  for (const { stroke, at } of placed) {
    if (!TIME_KEEPERS.includes(stroke.voice)) continue;
    const third = Math.round(at * 3);
    const beat = Math.floor(third / 3);
    const struck = beats.get(beat) ?? new Set();
    if (Math.abs(at * 3 - third) < 3 * IN_THREE.near) struck.add(third - 3 * beat);
    beats.set(beat, struck);
  }
  if (beats.size < 2) return 0;
  return [...beats.values()].filter((struck) => struck.has(1) && struck.has(2)).length / beats.size;
}

/** How much louder the voices that keep time are on beats than between them, from 0 to 1. */
function accentsOn(placed: readonly PlacedVoice[], isOn: (one: PlacedVoice) => boolean): number {
  const louder = TIME_KEEPERS.map((voice) => {
    const own = placed.filter(({ stroke }) => stroke.voice === voice);
    const levels = (of: readonly PlacedVoice[]) => of.map(({ stroke }) => stroke.levelDb);
    const [on, off] = [levels(own.filter(isOn)), levels(own.filter((one) => !isOn(one)))];
    if (Math.min(on.length, off.length) < ACCENTS.fewest) return 0;
    return (mean(on) - mean(off)) / ACCENTS.most;
  });
  return Math.min(1, Math.max(0, ...louder));
}

/** How the bar of a hypothesis is chosen. */
export interface Wanted {
  /** How a bar may be counted. */
  readonly bars: readonly Counted[];
  readonly swing: SwingRatio | null;
  /** Whether the meter is known: then nothing else needs to tell of it. */
  readonly isKnown: boolean;
  /** Beats a minute that are preferred where the take leaves it open. */
  readonly bpm?: number;
}

/** What beats cost before they are counted in bars. */
function costOfBeats(
  placed: readonly PlacedVoice[],
  beats: readonly number[],
  counted: Counted,
  { swing, bpm }: Wanted,
): number {
  const { isDotted, inBar, groups } = counted;
  const seconds = beatSecondsOf(beats);
  const places = WEIGHTS.places * costOfPlaces(placed, seconds, { isDotted, swing });
  const onBeats = new Set(placed.flatMap((one) => (isOnCount(one) ? [Math.round(one.at)] : [])));
  const empty = WEIGHTS.empty * (1 - Math.min(1, onBeats.size / beats.length));
  if (bpm !== undefined) return places + empty;
  const counts = groups ? inBar / groups.length : 1;
  const preferred = isDotted ? PREFERRED.dottedBpm : PREFERRED.bpm;
  const rate = rateOf(placed, beats.length / counts);
  const usual = isDotted ? TIME_KEEPING.dottedRate : TIME_KEEPING.rate;
  return (
    places +
    empty +
    WEIGHTS.preferred * octaves(60 / (seconds * counts) / preferred, PREFERRED.octaves) +
    (rate === null ? 0 : WEIGHTS.timeKeeping * octaves(rate / usual, TIME_KEEPING.octaves))
  );
}

function usualCost({ inBar, isDotted, groups }: Counted): number {
  if (groups) return USUAL.groups;
  const costs: Readonly<Record<number, number>> = isDotted ? USUAL.dotted : USUAL.plain;
  return costs[inBar] ?? USUAL.plain[3];
}

/** What strokes on the inner counts of beats cost, and accents there; 0 where each count is a beat. */
function costOfGroups(placed: readonly PlacedVoice[], bar: InBar): number {
  if (!bar.groups) return 0;
  const starts = beatsIn(bar);
  const isOn = (one: PlacedVoice) => isOnCount(one) && starts.includes(countAt(one.at, bar));
  const inside = placed.filter((one) => isOnCount(one) && !isOn(one)).length / placed.length;
  return WEIGHTS.places * INSIDE_GROUP * inside - WEIGHTS.accents * accentsOn(placed, isOn);
}

/**
 * Whether bars may be counted so where no meter is known: a dotted beat must be kept in three, and a plain bar of two is told
 * from half of one of four by a samba alone.
 */
function mayBeCounted({ inBar, isDotted }: Counted, placed: readonly PlacedVoice[]): boolean {
  if (isDotted) return keptInThree(placed) > IN_THREE.share;
  return inBar !== 2 || isSamba(placed);
}

/** The best bars of some beats, or null where none of those that are wanted may be. */
export function explain(
  beats: readonly number[],
  strokes: readonly StruckVoice[],
  wanted: Wanted,
): Explained | null {
  const placed = placeAll(beats, strokes);
  const accents = WEIGHTS.accents * accentsOn(placed, isOnCount);
  const bars = wanted.bars.flatMap((counted) => {
    const { inBar, groups } = counted;
    if (!wanted.isKnown && !mayBeCounted(counted, placed)) return [];
    const base = costOfBeats(placed, beats, counted, wanted) - (groups ? 0 : accents);
    const round = WEIGHTS.round * comesRound(placed, inBar, beats.length);
    return Array.from({ length: inBar }, (_, pickup): Explained => {
      const bar = { ...counted, pickup };
      const cost =
        base - round + usualCost(counted) + costOfGroups(placed, bar) - habitsIn(placed, bar, WEIGHTS);
      return { ...counted, beats, pickup, cost };
    });
  });
  return bars.toSorted((a, b) => a.cost - b.cost)[0] ?? null;
}
