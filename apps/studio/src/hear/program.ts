/**
 * What is played: an exercise in a form, as strokes at places that do not depend on the tempo.
 *
 * Conventions: a place is in whole notes from the first bar of the form, as performed (swing counted in); the
 * count-in lies before 0. Levels in dB relative to a plain stroke of the lead voice.
 */
import {
  type Articulation,
  type Form,
  type Lesson,
  type Mark,
  perform,
  type SoundingVoice,
  type StrokeRole,
  toNumber,
  type WrittenPlace,
} from '@shedbook/core';

/** A stroke of a program. */
export interface ProgramStroke {
  readonly place: number;
  readonly voice: SoundingVoice;
  readonly articulation: Articulation;
  readonly mark: Mark;
  readonly role: StrokeRole;
  readonly levelDb: number;
  readonly written: WrittenPlace;
  readonly patternBar: number | null;
}

/** Strokes of one time through a form. */
export interface Program {
  /** Programs with the same shape have the same strokes in the same order, at other places or levels. */
  readonly shape: string;
  readonly exercise: number | null;
  readonly strokes: readonly ProgramStroke[];
  /** One a beat; they sound only when the click is on. */
  readonly clicks: readonly ProgramStroke[];
  /** Where it starts, count-in included: 0 or less. */
  readonly start: number;
  /** Where it ends, and goes round. */
  readonly end: number;
}

/** What is asked for. */
export interface ProgramRequest {
  readonly exercise: number | null;
  readonly form: Form;
  readonly layers: number;
  /** Quarter notes a minute: matters where the feel goes by the tempo. */
  readonly bpm: number;
}

/** A tempo at which places and seconds are easily turned into each other: a whole note takes a second. */
function secondsToPlace(seconds: number, bpm: number): number {
  return (seconds * bpm) / 240;
}

/** Level of the click in dB relative to the lead voice, and of its first beat. */
const CLICK_DB = { beat: -6, bar: 0 } as const;

function clicksOf(lesson: Lesson, bars: number): readonly ProgramStroke[] {
  return Array.from({ length: bars }, (_, bar) => bar).flatMap((bar) => {
    let place = bar * toNumber(lesson.meter.bar);
    return lesson.meter.beats.map((length, beat): ProgramStroke => {
      const at = place;
      place += toNumber(length);
      return {
        place: at,
        voice: 'click',
        articulation: 'normal',
        mark: beat === 0 ? 'X' : 'x',
        role: 'groove',
        levelDb: beat === 0 ? CLICK_DB.bar : CLICK_DB.beat,
        written: { bar: bar + 1, beat: beat + 1, slot: 1 },
        patternBar: null,
      };
    });
  });
}

/** The program of a lesson. @throws RangeError when the exercise does not exist. */
export function createProgram(lesson: Lesson, request: ProgramRequest): Program {
  const { bpm, form, exercise, layers } = request;
  const performance = perform(lesson, { exercise, form, bpm, layers });
  const offset = performance.countInSeconds;
  const patternBars = new Map(performance.bars.map((each) => [each.bar, each.patternBar]));
  const strokes = performance.strokes.map(
    (stroke): ProgramStroke => ({
      place: secondsToPlace(stroke.timeSeconds - offset, bpm),
      voice: stroke.voice,
      articulation: stroke.articulation,
      mark: stroke.mark,
      role: stroke.role,
      levelDb: stroke.levelDb,
      written: stroke.written,
      patternBar: patternBars.get(stroke.written.bar) ?? null,
    }),
  );
  const bars = performance.bars.filter((each) => each.play !== 'count-in').length;
  const key = strokes.map(({ voice, written }) => `${voice} ${written.bar} ${written.beat} ${written.slot}`);
  return {
    shape: `${exercise} ${form.name}: ${key.join(',')}`,
    exercise,
    strokes,
    clicks: clicksOf(lesson, bars),
    start: -secondsToPlace(offset, bpm),
    end: bars * toNumber(lesson.meter.bar),
  };
}
