/**
 * What was played, read out of a report: strokes and the bars that they lie in. Everything that a verdict rests on is
 * matched anew from these, so that a loop, a take and a kit's notes are judged alike.
 *
 * Conventions: seconds of the report's own clock; bars of the form from 1; rounds, times through the form, from 0.
 * Levels in dB relative to the lead voice, also of reports that were kept when a recording's were re full scale.
 */

import { type FullReport, LeadDb, type TakeReport, type TempoPoint, type Voice } from '@shedbook/core';
import { strokeKey } from './stroke-key.ts';

/** A stroke that was heard. */
export interface PlayedStroke {
  /** Which stroke of the report it is, from 0. */
  readonly index: number;
  readonly seconds: number;
  readonly voice: Voice;
  readonly levelDb: LeadDb;
  /** 0 to 1. */
  readonly confidence: number;
  /** Whether it may be the loudspeaker's. */
  readonly isUnknown: boolean;
}

/** A bar of the form as it was gone through. */
export interface PlayedBar {
  readonly startSeconds: number;
  readonly barSeconds: number;
  readonly bar: number;
  readonly round: number;
  /** The same bar as the report counts it: on through all rounds where it does. */
  readonly reportBar: number;
}

/** What was played. */
export interface Played {
  readonly kind: 'audio' | 'midi';
  /** Whether the bar lines are those of a click; else they are the student's own. */
  readonly isAlongClick: boolean;
  readonly bars: readonly PlayedBar[];
  /** In order of time. */
  readonly strokes: readonly PlayedStroke[];
  /** Whether strokes were heard that only the loudspeaker can have made. */
  readonly isLoudspeakerHeard: boolean;
  /** Voices that a loudspeaker played, where the report says so. */
  readonly playing: readonly Voice[] | null;
  /** Whether the ear knows of a loudspeaker and has told whose strokes are whose. */
  readonly isToldByEar: boolean;
  /** Written places of which it cannot be said whether they were played, as by `strokeKey`. */
  readonly unknown: ReadonlySet<string>;
  /** The same of places under louder strokes: what is heard there counts, and nothing is missing there. */
  readonly covered: ReadonlySet<string>;
}

/** A bar that is this much longer or shorter than its tempo says has a hole behind it. */
const HOLE = 0.15;

/**
 * The level of a report's lead voice, in dB: 0 in one whose levels are relative to it; reports that were kept before
 * have those of a recording re full scale.
 */
function leadDbOf({ voices }: TakeReport, lead: Voice): number {
  const of = voices[lead];
  return of && of.hits > 0 ? of.levelDb : 0;
}

function isFull(report: TakeReport): report is FullReport {
  return 'tempo' in report && 'playedBars' in report && (report as FullReport).tempo.length > 0;
}

/** Bar lines of a report that tells of none: as many as its strokes need, at one tempo. */
function steadyLines({ alignment, strokes, missed }: TakeReport, barSeconds: number) {
  const placed = [...strokes.flatMap(({ written }) => written ?? []), ...missed];
  const bars = placed.reduce((most, { bar }) => Math.max(most, bar), 0);
  return Array.from({ length: bars }, (_, index) => ({
    startSeconds: alignment.startSeconds + index * barSeconds,
    barSeconds,
    bar: index + 1,
  }));
}

function lines(report: TakeReport, quartersInBar: number) {
  if (!isFull(report)) return steadyLines(report, (60 * quartersInBar) / report.alignment.bpm);
  const points = report.click ?? report.tempo;
  return points.flatMap(({ timeSeconds, bpm }: TempoPoint, index) => {
    const bar = report.playedBars[index] ?? null;
    const byTempo = (60 * quartersInBar) / bpm;
    const next = points[index + 1];
    const gap = next ? next.timeSeconds - timeSeconds : byTempo;
    const barSeconds = Math.abs(gap / byTempo - 1) < HOLE ? gap : byTempo;
    return bar === null ? [] : [{ startSeconds: timeSeconds as number, barSeconds, bar }];
  });
}

/** Some places of a report, each once for all rounds. */
function placesIn(places: TakeReport['unknown'] = [], bars: number): ReadonlySet<string> {
  return new Set(
    places.map(({ voice, ...place }) => strokeKey(voice, { ...place, bar: ((place.bar - 1) % bars) + 1 })),
  );
}

/** How long a loop is, in bars and quarter notes a bar, and the voice that its levels are relative to. */
export interface LoopShape {
  readonly bars: number;
  readonly quartersInBar: number;
  readonly lead: Voice;
}

/** What was played, by a report. */
export function playedIn(report: TakeReport, shape: LoopShape): Played {
  let round = -1;
  let last = Number.POSITIVE_INFINITY;
  const bars = lines(report, shape.quartersInBar).map((line): PlayedBar => {
    const bar = ((line.bar - 1) % shape.bars) + 1;
    if (bar <= last) round += 1;
    last = bar;
    return { ...line, bar, round, reportBar: line.bar };
  });
  const leadDb = leadDbOf(report, shape.lead);
  const own = report.strokes
    .map((stroke, index) => ({ ...stroke, index }))
    .filter(({ from }) => from !== 'loudspeaker');
  return {
    kind: report.take.kind,
    isAlongClick: isFull(report) && report.click !== undefined,
    bars,
    strokes: own
      .map(({ index, timeSeconds, voice, levelDb, confidence, from }) => ({
        index,
        seconds: timeSeconds as number,
        voice,
        levelDb: LeadDb(levelDb - leadDb),
        confidence,
        isUnknown: from === 'unknown',
      }))
      .toSorted((a, b) => a.seconds - b.seconds),
    isLoudspeakerHeard: own.length < report.strokes.length || report.loudspeaker !== undefined,
    playing: report.playing ?? null,
    isToldByEar: report.loudspeaker !== undefined || report.playing !== undefined,
    unknown: placesIn(report.unknown, shape.bars),
    covered: placesIn(report.covered, shape.bars),
  };
}
