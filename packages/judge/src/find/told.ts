/**
 * Which stroke of a report is which, as it was judged: a limb that came late by itself has its strokes at their places,
 * and what only sounded like a stroke is none.
 *
 * Conventions: strokes of the report by their index from 0; bars as the report counts them; ms, positive late.
 */
import {
  groupBy,
  Milliseconds,
  type PlacePlayed,
  Seconds,
  secondsToMilliseconds,
  type Voice,
  type WrittenPlace,
} from '@shedbook/core';
import { median } from '@shedbook/signal';
import type { Due } from '../take/due.ts';
import { wholeMatch } from '../take/hearing.ts';
import { type Match, type Pair, surfaceOf } from '../take/match.ts';
import type { PlayedStroke } from '../take/played.ts';
import type { JudgedStrokes } from './assess.ts';
import type { Places } from './places.ts';

/** A stroke of the report at its written place. */
export interface PlacedStroke {
  readonly index: number;
  /** The voice that it is written for: a rim shot may be heard as a snare. */
  readonly voice: Voice;
  readonly written: WrittenPlace;
  readonly offsetMs: Milliseconds;
}

/** A written stroke that did not come. */
export interface MissedStroke extends WrittenPlace {
  readonly voice: Voice;
  readonly dueSeconds: Seconds;
}

/** What was judged of a report, stroke by stroke. */
export interface Told {
  /** The voices that were judged; of the others the report stands as it is. */
  readonly voices: readonly Voice[];
  readonly placed: readonly PlacedStroke[];
  /** Strokes too many. */
  readonly extra: readonly number[];
  /** Strokes that were none, or that belong to nobody. */
  readonly none: readonly number[];
  readonly missed: readonly MissedStroke[];
  readonly places: readonly PlacePlayed[];
  /** Voices that the ear was in doubt about, and that were judged all the same. */
  readonly sure: readonly Voice[];
}

/** What is known besides. */
interface ToldOf {
  /** All strokes of the report that may be the student's. */
  readonly strokes: readonly PlayedStroke[];
  /** The surfaces of everything that is written, whoever plays it. */
  readonly written: ReadonlySet<Voice>;
  readonly sure: readonly Voice[];
}

function writtenAt({ asked, bar }: Due): WrittenPlace {
  return { ...asked.written, bar: bar.reportBar };
}

function offsetOf({ due, stroke }: Pair): Milliseconds {
  return secondsToMilliseconds(Seconds(stroke.seconds - due.writtenSeconds));
}

function ofVoices(match: Match, voices: ReadonlySet<Voice>): Match {
  return {
    pairs: match.pairs.filter(({ due }) => voices.has(due.voice)),
    missed: match.missed.filter(({ voice }) => voices.has(voice)),
    extra: match.extra,
  };
}

/** What was played at each written place, each time that it came round. */
function placesOf({ pairs, missed }: Match, places: Places): readonly PlacePlayed[] {
  const centres = new Map(
    [...groupBy(pairs, ({ due }) => due.voice)].map(([voice, own]) => [voice, median(own.map(offsetOf))]),
  );
  const due = [...pairs.map((pair) => pair.due), ...missed].toSorted((a, b) => a.seconds - b.seconds);
  const pairOf = new Map(pairs.map((pair) => [pair.due, pair]));
  return [...groupBy(due, (one) => places.nameOf(one))].flatMap(([name, own]): PlacePlayed[] => {
    const [first] = own;
    if (!first) return [];
    const { voice, asked } = first;
    const played = own.flatMap((one) => pairOf.get(one) ?? []);
    return [
      {
        ...{ voice, beat: asked.written.beat, slot: asked.written.slot, slots: asked.slots },
        bar: Math.min(...places.placesOf(name).map(({ bar }) => bar)),
        everyBar: places.isInEveryBar(name),
        missed: own.length - played.length,
        offsetsMs: played.map((pair) => Milliseconds(offsetOf(pair) - (centres.get(voice) ?? 0))),
      },
    ];
  });
}

/** Which stroke is which. */
export function toldOf(judged: JudgedStrokes, { strokes, written, sure }: ToldOf): Told {
  const voices = new Set(judged.voices);
  const surfaces = new Set(judged.voices.map(surfaceOf));
  const isTold = (voice: Voice) => surfaces.has(surfaceOf(voice)) || !written.has(surfaceOf(voice));
  const match = ofVoices(wholeMatch(judged.rounds), voices);
  const extra = match.extra.flatMap(({ voice, index }) => (isTold(voice) ? [index] : []));
  const some = new Set([...match.pairs.map(({ stroke }) => stroke.index), ...extra]);
  return {
    voices: judged.voices,
    placed: match.pairs.map((pair) => ({
      ...{ index: pair.stroke.index, voice: pair.due.voice },
      ...{ written: writtenAt(pair.due), offsetMs: offsetOf(pair) },
    })),
    extra,
    none: strokes.flatMap(({ voice, index }) => (isTold(voice) && !some.has(index) ? [index] : [])),
    missed: match.missed.map((due) => ({
      ...{ voice: due.voice, ...writtenAt(due) },
      dueSeconds: Seconds(due.writtenSeconds),
    })),
    places: placesOf(match, judged.places),
    sure: sure.filter((voice) => voices.has(voice)),
  };
}
