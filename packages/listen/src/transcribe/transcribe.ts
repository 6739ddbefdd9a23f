/**
 * Writing down what was played, without a lesson: beats, bars, feel, and what each voice has in each bar.
 *
 * Conventions: seconds from the take's first sample; bpm counts quarter notes; levels in dB relative to the lead voice.
 */
import {
  assembleParts,
  Bpm,
  type Exercise,
  type ExercisePart,
  type Feel,
  type GroovePart,
  groupBy,
  LeadDb,
  type Meter,
  NAMED_FEELS,
  type PlacedStroke,
  quantise,
  Seconds,
  swingAt,
  toNumber,
  type Voice,
} from '@shedbook/core';
import type { AssumedFact, RefusalFact } from '../fact.ts';
import { assumedFacts } from './assumed.ts';
import { partGroove } from './bars.ts';
import { countedAs, countLength, FAMILIES, familyOf } from './counted.ts';
import { exercisesOf } from './exercises.ts';
import { type Explained, explain, placeAll, type Wanted } from './explain.ts';
import { feelOf } from './feel.ts';
import { type InBars, PARTS } from './kept-time.ts';
import { beatSecondsOf, type PlacedVoice } from './phase.ts';
import { beatLengths, type Limits, walksOf } from './pulse.ts';
import { type AssumedStroke, fromTheCount, momentsOf, type StruckVoice } from './struck.ts';
import { touchesOf } from './touch.ts';

/** What is known of a take beforehand; what is left out is found. */
export interface Known {
  readonly meter?: Meter;
  readonly feel?: Feel;
  /** About how fast, in quarter notes a minute. */
  readonly bpm?: Bpm;
}

/** A bar that was heard. */
export interface HeardBar {
  readonly startSeconds: Seconds;
  readonly durationSeconds: Seconds;
}

/** What was played. */
export interface Transcript {
  readonly meter: Meter;
  readonly feel: Feel;
  readonly bpm: Bpm;
  readonly bars: readonly HeardBar[];
  /** Every voice with all its bars. */
  readonly parts: readonly ExercisePart[];
  /** What repeats in every bar. */
  readonly groove: readonly GroovePart[];
  /** The voice that speaks over it; null where it is all groove. */
  readonly comping: Voice | null;
  readonly exercises: readonly Exercise[];
  /** Level of a plain stroke of each voice, beside the groove's first. */
  readonly levelDb: Readonly<Partial<Record<Voice, LeadDb>>>;
  /** Strokes that fit no slot. */
  readonly misfits: readonly StruckVoice[];
  /** Strokes that were not heard, since they lie under louder ones, and are written as in the other beats. */
  readonly assumed: readonly AssumedStroke[];
  /** What has to be said of it. */
  readonly remarks: readonly AssumedFact[];
}

/** What was written down, or why nothing was. */
export type Transcribed =
  | { readonly transcript: Transcript; readonly refusal: null }
  | { readonly transcript: null; readonly refusal: RefusalFact };

/** How far a tempo that was told may be off, as a ratio. */
const ABOUT = 1.12;
/** Fewer moments follow no beat. */
const FEWEST = 8;

/** The beats and bars that explain a take best, or null where none do. */
function bestBars(strokes: readonly StruckVoice[], known: Known): Explained | null {
  const moments = momentsOf(strokes);
  if (moments.length < FEWEST) return null;
  const walksAt = walksOnce(moments);
  const families = known.meter ? [familyOf(known.meter)] : FAMILIES;
  const explained = families.flatMap(({ meters, limits }): readonly Explained[] => {
    // Quarter notes that one count lasts.
    const quarters = 4 * toNumber(countLength(meters[0]!));
    const pulse = (known.bpm ?? 0) / quarters;
    const wanted: Wanted = {
      bars: meters.map(countedAs),
      swing: known.feel ? swingAt(known.feel, known.bpm ?? 120) : null,
      isKnown: known.meter !== undefined,
      ...(known.bpm === undefined ? {} : { bpm: pulse }),
    };
    const about = { leastBpm: pulse / ABOUT, mostBpm: pulse * ABOUT };
    return walksAt(known.bpm === undefined ? limits : about).flatMap(
      (beats) => explain(beats, strokes, wanted) ?? [],
    );
  });
  return explained.toSorted((a, b) => a.cost - b.cost)[0] ?? null;
}

/** The walks within limits, walked once for all families that have the same ones. */
function walksOnce(moments: readonly number[]) {
  const known = new Map<Limits, ReturnType<typeof walksOf>>();
  return (limits: Limits) => {
    const walks =
      known.get(limits) ?? walksOf(moments, beatLengths(moments, limits)).filter((beats) => beats.length > 2);
    known.set(limits, walks);
    return walks;
  };
}

interface Placed extends PlacedStroke {
  readonly struck: StruckVoice;
}

/** Strokes on their slots; those of the last bar's first beat alone end a take, and are left out. */
function placeStrokes(
  placed: readonly PlacedVoice[],
  { pickup, inBar }: Explained,
  of: Meter,
  feel: Feel,
  bpm: Bpm,
) {
  const length = countLength(of);
  const wholes = (at: number) => (at - pickup) * toNumber(length);
  const byVoice = [...groupBy(placed, ({ stroke }) => stroke.voice)];
  const grid = { meter: of, swing: swingAt(feel, bpm), toleranceBeats: null };
  const places = quantise(
    byVoice.map(([, own]) => own.map(({ at }) => wholes(at))),
    grid,
  );
  const plainDb = new Map<Voice, number>();
  const strokes: Placed[] = [];
  const misfits: StruckVoice[] = [];
  byVoice.forEach(([voice, own], v) => {
    const touch = touchesOf(own.map(({ stroke }) => stroke.levelDb));
    plainDb.set(voice, touch.plainDb);
    own.forEach(({ stroke }, i) => {
      const place = places[v]?.[i];
      if (!place) misfits.push(stroke);
      else strokes.push({ ...place, ...touch.touches[i]!, voice, articulation: 'normal', struck: stroke });
    });
  });
  const first = strokes.reduce((least, { bar }) => Math.min(least, bar), Number.POSITIVE_INFINITY);
  return { strokes, misfits, plainDb, first, inBar };
}

function barCount(strokes: readonly Placed[], first: number): number {
  const last = strokes.reduce((most, { bar }) => Math.max(most, bar), first);
  const inLast = strokes.filter(({ bar }) => bar === last);
  const isEnd = last - first >= 2 && inLast.every(({ inBar }) => inBar.num === 0);
  return last - first + (isEnd ? 0 : 1);
}

/** Bars of a take, and how they are counted and felt. */
export interface FoundBars {
  readonly explained: Explained;
  readonly meter: Meter;
  readonly feel: Feel;
  readonly bpm: Bpm;
}

/** The bars of a take, or null where no beat can be followed. @param strokes in order of time */
export function findBars(strokes: readonly StruckVoice[], known: Known): FoundBars | null {
  const explained = bestBars(strokes, known);
  if (!explained) return null;
  const of = explained.meter;
  const bpm = Bpm((60 / beatSecondsOf(explained.beats)) * 4 * toNumber(countLength(of)));
  const even = explained.isDotted || explained.groups ? NAMED_FEELS.even : null;
  const feel = known.feel ?? even ?? feelOf(placeAll(explained.beats, strokes));
  return { explained, meter: of, feel, bpm };
}

/** Seconds of a bar line, by the index of its bar from the first bar line on; beyond the beats time goes on as there. */
function barLine({ beats, pickup, inBar }: Explained, bar: number): Seconds {
  const index = pickup + bar * inBar;
  const edge = Math.max(0, Math.min(beats.length - 1, index));
  return Seconds(beats[edge]! + (index - edge) * beatSecondsOf(beats));
}

/** Strokes with their bar, their beat and how far into it they are. */
export function inBarsOf(strokes: readonly StruckVoice[], found: FoundBars): readonly InBars[] {
  const { explained, meter: of, feel, bpm } = found;
  const { strokes: placed } = placeStrokes(placeAll(explained.beats, strokes), explained, of, feel, bpm);
  const length = toNumber(countLength(of));
  return placed.map(({ bar, inBar, struck }) => {
    const parts = Math.round((PARTS * toNumber(inBar)) / length);
    return { bar, beat: Math.floor(parts / PARTS), part: parts % PARTS, struck };
  });
}

/** Writes strokes down in bars that are known. */
export function writeDown(strokes: readonly StruckVoice[], found: FoundBars): Transcript {
  const { explained, meter: of, feel, bpm } = found;
  const all = placeAll(explained.beats, strokes);
  const { strokes: placed, misfits, plainDb, first } = placeStrokes(all, explained, of, feel, bpm);
  const count = barCount(placed, first);
  const own = placed
    .filter(({ bar }) => bar - first < count)
    .map((one) => ({ ...one, bar: one.bar - first }));
  const { parts, misfits: left } = assembleParts(own, of, count);
  const parted = partGroove(parts);
  const lead = parted.groove[0]?.voice ?? parts[0]?.voice;
  const zero = (lead && plainDb.get(lead)) ?? 0;
  const assumed = own.flatMap(({ struck: { under, ...struck } }) => (under ? [{ ...struck, under }] : []));
  return {
    meter: of,
    feel,
    bpm,
    bars: Array.from({ length: count }, (_, bar) => {
      const startSeconds = barLine(explained, bar + first);
      const durationSeconds = Seconds(barLine(explained, bar + first + 1) - startSeconds);
      return { startSeconds, durationSeconds };
    }),
    parts,
    groove: parted.groove.map(({ voice, bar }) => ({ voice, pattern: { bars: [bar] } })),
    comping: parted.comping[0] ?? null,
    exercises: exercisesOf(parts, parted),
    levelDb: Object.fromEntries([...plainDb].map(([voice, db]) => [voice, LeadDb(db - zero)])),
    misfits: [...misfits, ...left.map(({ struck }) => struck)],
    assumed,
    remarks: assumedFacts(assumed),
  };
}

/** Writes down what a kit sent. @param notes in order of time */
export function transcribeNotes(notes: readonly StruckVoice[], known: Known = {}): Transcribed {
  if (notes.length === 0) return { transcript: null, refusal: { fact: 'no-drum-notes' } };
  const strokes = fromTheCount(notes);
  const found = findBars(strokes, known);
  if (!found) return { transcript: null, refusal: { fact: 'no-beat-followed' } };
  return { transcript: writeDown(strokes, found), refusal: null };
}
