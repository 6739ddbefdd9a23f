/**
 * What a loop asks: every stroke with its limb, its place and what surrounds it.
 *
 * Conventions: bars from 1, counted from the start of the loop; intervals in seconds at the asked tempo; levels in
 * dB relative to the lead voice. A loop is the form gone through once.
 */
import {
  type Bpm,
  beatLength,
  beatStarts,
  type Form,
  hasOnset,
  isVoice,
  type LeadDb,
  type Lesson,
  type Limb,
  type Meter,
  type Performance,
  type PerformedBar,
  perform,
  Quarters,
  Seconds,
  type SetUp,
  type Stroke,
  type StrokeRole,
  type Subdivision,
  type SwingRatio,
  sectionOf,
  swingAt,
  toNumber,
  type Voice,
  type WrittenPlace,
} from '@shedbook/core';

/** One stroke that is asked for. */
export interface TaskStroke {
  readonly voice: Voice;
  readonly limb: Limb;
  readonly written: WrittenPlace;
  readonly slots: Subdivision;
  /** Time to the nearest other moment at which anything is struck. */
  readonly intervalSeconds: Seconds;
  /** Whether another limb strikes at the same moment. */
  readonly together: boolean;
  readonly levelDb: LeadDb;
  /** From the start of the loop, at the tempo that is asked. */
  readonly timeSeconds: Seconds;
  readonly role: StrokeRole;
}

/** A beat of the bar. */
export interface TaskBeat {
  /** Share of the bar before it. */
  readonly start: number;
  /** Its own share of the bar. */
  readonly length: number;
}

/** What a loop asks of a student. */
export interface LoopTask {
  readonly bars: number;
  readonly bpm: Bpm;
  readonly setUp: SetUp;
  readonly lead: Voice;
  /** What the feel swings; null where it is even. */
  readonly swings: SwingRatio['of'] | null;
  /** Length of a bar at the tempo that is asked. */
  readonly barSeconds: Seconds;
  readonly meter: Meter;
  readonly beats: readonly TaskBeat[];
  readonly quartersInBar: Quarters;
  /** What each bar plays, in order. */
  readonly plays: readonly PerformedBar['play'][];
  /** The bar of the exercise (from 0) that each bar plays; null where it plays none. */
  readonly patternBars: readonly PerformedBar['patternBar'][];
  readonly strokes: readonly TaskStroke[];
  /** Strokes, as by `strokeKey`, of which an ear cannot say that they are missing; none when left out. */
  readonly covered?: ReadonlySet<string>;
}

/** What is to be played: the exercise (null for the groove alone), its form, its tempo. */
export interface LoopAsked {
  readonly exercise: number | null;
  readonly form: Form;
  readonly bpm: Bpm;
  /** Layers that are played, from 1; all when left out. */
  readonly layers?: number;
  /** Voices that the student does not play. */
  readonly mute?: readonly Voice[];
}

/** Where in its beat a stroke is asked for, as a share of that beat. */
export function askedPhase({ beats, barSeconds }: LoopTask, { timeSeconds, written }: TaskStroke): number {
  const { start, length } = beatOf(beats, written);
  return (timeSeconds / barSeconds - (written.bar - 1) - start) / length;
}

/** The beat that a place lies in. */
export function beatOf(beats: readonly TaskBeat[], { beat }: WrittenPlace): TaskBeat {
  return beats[beat - 1] as TaskBeat;
}

function beatsOf(meter: Meter): readonly TaskBeat[] {
  const bar = toNumber(meter.bar);
  return beatStarts(meter).map((start, index) => ({
    start: toNumber(start) / bar,
    length: toNumber(beatLength(meter, index)) / bar,
  }));
}

/** Moments closer than this are one moment: strokes of one slot differ by rounding only. */
const SAME_MOMENT_SECONDS = 1e-6;

/** Every moment at which something is struck, in seconds, in order. */
function momentsOf(strokes: readonly Stroke[]): readonly number[] {
  return strokes
    .map((stroke) => stroke.timeSeconds)
    .filter((time, i, all) => i === 0 || time - (all[i - 1] as number) > SAME_MOMENT_SECONDS);
}

/** Time from a moment, by its index, to the nearer of its neighbours; the loop comes round again at `duration`. */
function intervalAt(moments: readonly number[], duration: number, index: number, time: number): Seconds {
  const before = moments[index - 1] ?? (moments.at(-1) as number) - duration;
  const after = moments[index + 1] ?? (moments[0] as number) + duration;
  return Seconds(Math.min(time - before, after - time));
}

function taskStrokes(performance: Performance): readonly TaskStroke[] {
  const { durationSeconds } = performance;
  const strokes = performance.strokes.filter(({ voice }) => isVoice(voice));
  const moments = momentsOf(strokes);
  let moment = 0;
  return strokes.flatMap((stroke, index): TaskStroke[] => {
    const { voice, limb, written, slots, timeSeconds, levelDb, role } = stroke;
    while (timeSeconds - moments[moment]! > SAME_MOMENT_SECONDS) moment += 1;
    if (!isVoice(voice) || limb === null || !hasOnset(stroke)) return [];
    // strokes are in order of time, so those of one moment stand side by side
    const together = [strokes[index - 1], strokes[index + 1]].some(
      (other) => other !== undefined && Math.abs(other.timeSeconds - timeSeconds) <= SAME_MOMENT_SECONDS,
    );
    const intervalSeconds = intervalAt(moments, durationSeconds, moment, timeSeconds);
    return [{ voice, limb, written, slots, intervalSeconds, together, levelDb, timeSeconds, role }];
  });
}

/**
 * The task of one loop.
 * @throws RangeError when the lesson does not have the exercise.
 */
export function loopTask(whole: Lesson, asked: LoopAsked): LoopTask {
  const lesson = sectionOf(whole, asked.exercise);
  const form = { ...asked.form, repeat: 1, countInBars: 0 };
  const performance = perform(lesson, { ...asked, form });
  return {
    bars: performance.bars.length,
    barSeconds: Seconds(performance.durationSeconds / performance.bars.length),
    meter: lesson.meter,
    beats: beatsOf(lesson.meter),
    quartersInBar: Quarters(4 * toNumber(lesson.meter.bar)),
    plays: performance.bars.map(({ play }) => play),
    patternBars: performance.bars.map(({ patternBar }) => patternBar),
    bpm: asked.bpm,
    setUp: lesson.setUp,
    lead: lesson.lead,
    swings: swingAt(lesson.feel, asked.bpm)?.of ?? null,
    strokes: taskStrokes(performance),
  };
}
