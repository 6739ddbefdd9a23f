/**
 * From what was decided to the numbers of a report.
 *
 * Conventions: offsets in ms against the take's own pulse and the lesson's feel, positive late; levels in dB;
 * spreads robust.
 */
import {
  type AskedOf,
  Bpm,
  type FullReport,
  LeadDb,
  type Lesson,
  Milliseconds,
  Quarters,
  REPORT_VERSION,
  type ReportStroke,
  Seconds,
  secondsToMilliseconds,
  swingAt,
  type TempoPoint,
  type Voice,
  type VoiceReport,
} from '@shedbook/core';
import { fitLine, median, spread } from '@shedbook/signal';
import type { PlacedBar } from '../align/bars.ts';
import type { FormGrid } from '../align/form-grid.ts';
import type { HeardStroke } from '../decide/heard-stroke.ts';
import type { Place } from '../decide/places.ts';
import type { Decision } from '../decide/strokes.ts';
import { leadLevelDb, tellingOf, voiceLevelDb } from './lead-level.ts';
import { type DuePlace, tellPlaces } from './places-played.ts';
import { type Pulse, type PulsePoint, pulseThrough } from './pulse.ts';
import { summariseSwing, swingRatios } from './swing.ts';

/** What a report is made from. */
export interface Heard {
  readonly kind: 'audio' | 'midi';
  readonly durationSeconds: Seconds;
  readonly lesson: Lesson;
  readonly grid: FormGrid;
  readonly bars: readonly PlacedBar[];
  readonly decision: Decision;
  readonly confidence: number;
  /** Quarter notes a minute that were asked. */
  readonly askedBpm: Bpm;
  /** What offsets are measured against; the take's own pulse when left out. */
  readonly clock?: Pulse;
}

/** What was measured, before it is said what could not be. */
export type Measured = Omit<FullReport, 'notHeard' | 'unheard'>;

/** Weight of a place that was only followed, beside a stroke. */
const FOLLOWED = 0.05;
/** Within this many quarters of a stroke, what was followed says nothing more. */
const NEAR_QUARTERS = 2;
/** Fewest bars for a drift to be worth a number. */
const DRIFT_BARS = 4;

function quartersOf(grid: FormGrid, place: Place): number {
  return (place.takeBar + place.expected.position) * grid.quarters;
}

function pulsePoints(heard: Heard, voices: ReadonlySet<Voice>): readonly PulsePoint[] {
  const { grid, bars, decision } = heard;
  const points: PulsePoint[] = [];
  for (const stroke of decision.strokes) {
    if (!stroke.place?.expected.onBeat || !voices.has(stroke.voice)) continue;
    points.push({ quarters: quartersOf(grid, stroke.place), seconds: stroke.timeSeconds, weight: 1 });
  }
  const struck = points.map((point) => point.quarters).toSorted((a, b) => a - b);
  let next = 0;
  bars.forEach((bar, index) => {
    grid.beats.forEach((beat) => {
      const quarters = (index + beat) * grid.quarters;
      while (next < struck.length && struck[next]! < quarters - NEAR_QUARTERS) next += 1;
      if ((struck[next] ?? Number.POSITIVE_INFINITY) <= quarters + NEAR_QUARTERS) return;
      const seconds = bar.startSeconds + beat * bar.barSeconds;
      points.push({ quarters, seconds, weight: FOLLOWED });
    });
  });
  return points.toSorted((a, b) => a.quarters - b.quarters);
}

/** The pulse by the lead voice where it plays on the beat, by every voice where it does not. */
export function pulseOf(heard: Heard): Pulse {
  const lead = heard.lesson.lead;
  const onBeat = heard.decision.strokes.filter((stroke) => stroke.place?.expected.onBeat);
  const byLead = onBeat.filter((stroke) => stroke.voice === lead).length;
  const enough = byLead >= heard.bars.length;
  return pulseThrough(pulsePoints(heard, enough ? new Set([lead]) : new Set(heard.grid.voices)));
}

function voiceReport(
  strokes: readonly HeardStroke[],
  missed: number,
  offsets: readonly number[],
  levelDb: number,
): VoiceReport {
  return {
    hits: strokes.filter((stroke) => stroke.place).length,
    missed,
    extra: strokes.filter((stroke) => !stroke.place).length,
    offsetMs: { median: Milliseconds(median(offsets)), spread: Milliseconds(spread(offsets)) },
    levelDb: LeadDb(levelDb),
  };
}

function tempoCurve(pulse: Pulse, heard: Heard): readonly TempoPoint[] {
  return heard.bars.map((_, index) => ({
    timeSeconds: Seconds(pulse.secondsAt(index * heard.grid.quarters)),
    bpm: Bpm(pulse.bpmAt((index + 0.5) * heard.grid.quarters)),
  }));
}

function meanBpm(pulse: Pulse, bars: number, quarters: number): Bpm {
  const span = pulse.secondsAt(bars * quarters) - pulse.secondsAt(0);
  return Bpm(span > 0 ? (60 * bars * quarters) / span : 0);
}

/** Beats of the lead voice that were struck, for the swing meter: the strokes themselves. */
function swingOf(heard: Heard, pulse: Pulse) {
  const { grid, lesson, bars, decision } = heard;
  const beats = bars.flatMap((_, index) =>
    grid.beats.map((beat) => pulse.secondsAt((index + beat) * grid.quarters)),
  );
  beats.push(pulse.secondsAt(bars.length * grid.quarters));
  const onsets = decision.strokes
    .filter((stroke) => stroke.voice === lesson.lead)
    .map((stroke) => stroke.timeSeconds);
  return summariseSwing(swingRatios(beats, onsets));
}

function askedOf({ lesson, grid, askedBpm }: Heard, bpm: number): AskedOf {
  const swing = swingAt(lesson.feel, bpm);
  return {
    bpm: askedBpm,
    swingRatio: swing?.of === 'eighths' ? swing.ratio : null,
    beatsInBar: grid.beats.length,
    beats: grid.beats,
    quartersInBar: Quarters(grid.quarters),
  };
}

/** Median level that is asked of each voice: of a voice that mostly plays ghost notes, that of a ghost note. */
function askedLevels(due: readonly Place[]): FullReport['lessonBalanceDb'] {
  const levels = new Map<Voice, number[]>();
  for (const { expected } of due) {
    const { voice, stroke } = expected;
    levels.set(voice, [...(levels.get(voice) ?? []), stroke.levelDb]);
  }
  return Object.fromEntries([...levels].map(([voice, all]) => [voice, LeadDb(median(all))]));
}

function relativeToLead(decision: Decision, lead: Voice, asked: ReturnType<typeof askedLevels>): Decision {
  const leadDb = leadLevelDb(lead, decision.strokes, asked);
  const strokes = decision.strokes.map((stroke) => ({ ...stroke, levelDb: stroke.levelDb - leadDb }));
  return { ...decision, strokes };
}

/** The figures of what was heard. */
export function measure(heard: Heard): Measured {
  const { grid, lesson, bars } = heard;
  const asked = askedLevels([
    ...heard.decision.strokes.flatMap(({ place }) => place ?? []),
    ...heard.decision.missed,
  ]);
  const decision = relativeToLead(heard.decision, lesson.lead, asked);
  const pulse = pulseOf(heard);
  const clock = heard.clock ?? pulse;
  const offsetOf = (place: Place, seconds: number) =>
    secondsToMilliseconds(Seconds(seconds - clock.secondsAt(quartersOf(grid, place))));
  const strokes = decision.strokes.map(
    (stroke): ReportStroke => ({
      timeSeconds: Seconds(stroke.timeSeconds),
      voice: stroke.voice,
      levelDb: LeadDb(stroke.levelDb),
      written: stroke.place?.expected.stroke.written ?? null,
      offsetMs: stroke.place ? offsetOf(stroke.place, stroke.timeSeconds) : null,
      confidence: stroke.confidence,
    }),
  );
  const due: DuePlace[] = [
    ...decision.strokes.flatMap(({ place, timeSeconds }) =>
      place ? [{ place, offsetMs: offsetOf(place, timeSeconds) }] : [],
    ),
    ...decision.missed.map((place) => ({ place, offsetMs: null })),
  ];
  const names = [...new Set([...grid.voices, ...decision.strokes.map((stroke) => stroke.voice)])];
  const voices: Partial<Record<Voice, VoiceReport>> = {};
  const centres = new Map<string, number>();
  for (const voice of names) {
    const own = decision.strokes.filter((stroke) => stroke.voice === voice);
    const offsets = due.flatMap((one) =>
      one.place.expected.voice === voice && one.offsetMs !== null ? [one.offsetMs] : [],
    );
    const missed = decision.missed.filter((place) => place.expected.voice === voice).length;
    voices[voice] = voiceReport(
      own,
      missed,
      offsets,
      voiceLevelDb(tellingOf(voice, decision.strokes), asked[voice]),
    );
    centres.set(voice, median(offsets));
  }
  const tempo = tempoCurve(pulse, heard);
  const bpm = meanBpm(pulse, bars.length, grid.quarters);
  const drift = fitLine(tempo.map((point) => ({ x: point.timeSeconds / 60, y: point.bpm, weight: 1 })));
  const changes = tempo
    .slice(1)
    .map((point, i) => (100 * Math.abs(point.bpm - tempo[i]!.bpm)) / tempo[i]!.bpm);
  const played = names.filter((voice) => decision.strokes.some((stroke) => stroke.voice === voice));
  return {
    version: REPORT_VERSION,
    take: { kind: heard.kind, durationSeconds: heard.durationSeconds },
    alignment: {
      startSeconds: Seconds(pulse.secondsAt(0)),
      bpm,
      driftBpmPerMinute: tempo.length >= DRIFT_BARS ? drift.slope : 0,
      confidence: heard.confidence,
    },
    strokes,
    missed: decision.missed.map(({ expected }) => ({ ...expected.stroke.written, voice: expected.voice })),
    voices,
    swingRatio: swingOf(heard, pulse),
    balanceDb: played.includes(lesson.lead)
      ? Object.fromEntries(played.map((voice) => [voice, voices[voice]!.levelDb]))
      : {},
    missedSeconds: decision.missed.map((place) => Seconds(clock.secondsAt(quartersOf(grid, place)))),
    tempo,
    ...(heard.clock ? { click: tempoCurve(heard.clock, heard) } : {}),
    barToBarPercent: changes.length > 0 ? median(changes) : null,
    places: tellPlaces(grid, due, centres),
    evenness: played.map((voice) => ({
      voice,
      spreadDb: spread(
        decision.strokes.flatMap((stroke) =>
          stroke.voice === voice && stroke.place?.expected.stroke.mark === 'x' ? [stroke.levelDb] : [],
        ),
      ),
    })),
    playedBars: bars.map((bar) => (bar.formBar === null ? null : grid.bars[bar.formBar]!.bar)),
    lessonBalanceDb: asked,
    lead: lesson.lead,
    asked: askedOf(heard, bpm),
  };
}
