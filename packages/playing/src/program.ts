/**
 * What is played: an exercise in a form, as strokes at places that do not depend on the tempo.
 *
 * Conventions: a place is in whole notes from the first bar of the form, as performed (swing counted in); the
 * count-in lies before 0. Levels in dB relative to a plain stroke of the lead voice.
 */
import {
  type Articulation,
  type Bpm,
  beatStarts,
  type Form,
  type LeadDb,
  type Lesson,
  type Mark,
  type Performance,
  type PerformedBar,
  perform,
  type SoundingVoice,
  type Stroke,
  type StrokeRole,
  sectionOf,
  toNumber,
  type WrittenPlace,
} from '@shedbook/core';
import { addClicks, type ClickOptions } from '@shedbook/sound';

/** A stroke of a program. */
export interface ProgramStroke {
  readonly place: number;
  readonly voice: SoundingVoice;
  readonly articulation: Articulation;
  readonly mark: Mark;
  readonly role: StrokeRole;
  readonly levelDb: LeadDb;
  readonly written: WrittenPlace;
  /** Slots of its beat. */
  readonly slots: number;
  readonly patternBar: number | null;
  /** From its place to its end in whole notes, where it is held. */
  readonly held?: number;
}

/** A beat of the form, whether anything sounds there or not. */
export interface ProgramBeat {
  readonly place: number;
  /** Bar of the form, from 1. */
  readonly bar: number;
  /** Beat of the bar, from 1. */
  readonly beat: number;
}

/** A bar of the form and where it starts. */
export interface ProgramBar extends Pick<PerformedBar, 'bar' | 'play' | 'patternBar'> {
  readonly place: number;
}

/** Strokes of one time through a form. */
export interface Program {
  /** Programs with the same shape have the same strokes in the same order, at other places or levels. */
  readonly shape: string;
  readonly exercise: number | null;
  readonly strokes: readonly ProgramStroke[];
  /** They sound only when the click is on. */
  readonly clicks: readonly ProgramStroke[];
  /** Every beat and bar after the count-in, in order. */
  readonly beats: readonly ProgramBeat[];
  readonly bars: readonly ProgramBar[];
  /** Where it starts, count-in included: whole notes, 0 or less. */
  readonly start: number;
  /** Where it ends, and goes round: whole notes. */
  readonly end: number;
}

/** What is asked for. */
export interface ProgramRequest {
  readonly exercise: number | null;
  readonly form: Form;
  readonly layers: number;
  /** Quarter notes a minute: matters where the feel goes by the tempo. */
  readonly bpm: Bpm;
  /** Where clicks fall when they are on: on every beat where left out. */
  readonly clicks?: Pick<ClickOptions, 'beats' | 'subdivision'>;
}

/** A tempo at which places and seconds are easily turned into each other: a whole note takes a second. */
function secondsToPlace(seconds: number, bpm: number): number {
  return (seconds * bpm) / 240;
}

/** A stroke at its place in the form. */
function placed(stroke: Stroke, performance: Performance, bpm: number): ProgramStroke {
  const { voice, articulation, mark, role, levelDb, written, slots, timeSeconds, heldSeconds } = stroke;
  const place = secondsToPlace(timeSeconds - performance.countInSeconds, bpm);
  const bar = performance.bars.find((each) => each.bar === written.bar);
  const patternBar = bar?.patternBar ?? null;
  const held = heldSeconds === undefined ? {} : { held: secondsToPlace(heldSeconds, bpm) };
  return { place, voice, articulation, mark, role, levelDb, written, slots, patternBar, ...held };
}

/** The clicks alone. */
function clicksOf(lesson: Lesson, performance: Performance, request: ProgramRequest) {
  const silent = { ...performance, strokes: [] };
  const { strokes } = addClicks(silent, { meter: lesson.meter, ...request.clicks });
  return strokes.map(
    (stroke): ProgramStroke => ({ ...placed(stroke, performance, request.bpm), role: 'groove' }),
  );
}

function barsOf(lesson: Lesson, performance: Performance): readonly ProgramBar[] {
  const length = toNumber(lesson.meter.bar);
  return performance.bars
    .filter((each) => each.play !== 'count-in')
    .map(({ bar, play, patternBar }) => ({ bar, play, patternBar, place: (bar - 1) * length }));
}

function beatsOf(lesson: Lesson, bars: readonly ProgramBar[]): readonly ProgramBeat[] {
  const starts = beatStarts(lesson.meter).map(toNumber);
  return bars.flatMap(({ bar, place }) =>
    starts.map((start, index) => ({ place: place + start, bar, beat: index + 1 })),
  );
}

/** The program of a lesson. @throws RangeError when the exercise does not exist. */
export function createProgram(whole: Lesson, request: ProgramRequest): Program {
  const { bpm, form, exercise, layers } = request;
  const lesson = sectionOf(whole, exercise);
  const performance = perform(lesson, { exercise, form, bpm, layers });
  const strokes = performance.strokes.map((stroke) => placed(stroke, performance, bpm));
  const bars = barsOf(lesson, performance);
  const key = strokes.map(({ voice, written }) => `${voice} ${written.bar} ${written.beat} ${written.slot}`);
  return {
    shape: `${exercise} ${form.name}: ${key.join(',')}`,
    exercise,
    strokes,
    clicks: clicksOf(lesson, performance, request),
    beats: beatsOf(lesson, bars),
    bars,
    start: -secondsToPlace(performance.countInSeconds, bpm),
    end: bars.length * toNumber(lesson.meter.bar),
  };
}
