/**
 * From a lesson to strokes: any exercise in any form, at any tempo, layer by layer.
 *
 * Conventions: seconds from the start of the rendering. Where a voice of a fixed ending needs a limb that the
 * groove uses at that very moment, the limb leaves the groove's stroke out: nobody plays ride and crash with one
 * hand.
 */
import { constantTempo, createTimeline, type TempoMap, type Timeline } from '../feel/timeline.ts';
import { ACCENT_DB, GHOST_DB } from '../kit/dynamics.ts';
import { goesOn, type Strike, strikeOf } from '../kit/strike.ts';
import { type Articulation, handLetter, type Limb, type SoundingVoice, type Voice } from '../kit/voice.ts';
import { type How, howOf } from '../lesson/how.ts';
import type { Exercise, Form, Lesson } from '../lesson/lesson.ts';
import { sectionOf } from '../lesson/section.ts';
import { type Mark, type Subdivision, struckSlots } from '../rhythm/cell.ts';
import { formatFraction } from '../rhythm/fraction.ts';
import { type Bpm, LeadDb, Seconds } from '../units.ts';
import { endOfHeld, type FormCells } from './held.ts';
import type { Performance, PerformedBar } from './performance.ts';
import {
  cellsOfBar,
  exerciseOf,
  orderOf,
  type PlacedCell,
  type PlannedBar,
  type Playing,
  planBars,
} from './place.ts';
import type { Sticking, Stroke } from './stroke.ts';

/** What is to be played, how fast, and what is left out. */
export interface PerformOptions {
  /** Number of the exercise, or null for time only. */
  readonly exercise: number | null;
  readonly form: Form;
  /** Tempo in quarter notes a minute; the lesson's start tempo when left out. Not with `tempo`. */
  readonly bpm?: Bpm;
  /** A tempo that changes; score time 0 is the first bar line after the count-in. */
  readonly tempo?: TempoMap;
  /** How many of the lesson's layers play, from 1; all when left out. */
  readonly layers?: number;
  /** Voices left out, for a student to play. */
  readonly mute?: readonly Voice[];
}

/** What strokes are made of. */
interface Played {
  readonly lesson: Lesson;
  readonly exercise: Exercise | null;
  readonly timeline: Timeline;
  readonly cells: FormCells;
}

function limbOf(lesson: Lesson, voice: Voice, hand: Sticking): Limb {
  if (hand === null || hand === 'B') return lesson.limbs[voice];
  return handLetter('lead hand', lesson.setUp) === hand ? 'lead hand' : 'other hand';
}

/** How a stroke sounds: a plain one on the snare is a tap where the hands hold brushes, on the ride may be on its bell. */
function articulationOf({ playedWith }: Lesson, { voice, articulation }: Strike, how: How): Articulation {
  if (articulation !== 'normal') return articulation;
  if (voice === 'ride' && how.includes('bell')) return 'bell';
  return playedWith === 'brushes' && voice === 'snare' ? 'tap' : articulation;
}

function strokeOf(
  { lesson, exercise, timeline, cells }: Played,
  bar: number,
  placed: PlacedCell,
  slot: number,
  hand: Sticking,
): Stroke {
  const mark = placed.cell.marks[slot] as Mark;
  const strike = strikeOf(placed.voice, mark);
  if (!strike) throw new RangeError(`Internal error: ${placed.voice} has no mark "${mark}"`);
  const slots = placed.cell.marks.length as Subdivision;
  const place = { bar, beat: placed.beat, slot, slots };
  const balance = placed.role === 'pattern' ? lesson.exerciseBalance : lesson.balance;
  const how = howOf(lesson, placed.role === 'ending' ? null : exercise, strike.voice);
  const end = goesOn(placed.voice, mark) ? endOfHeld(cells, bar, placed, slot) : null;
  const touch = strike.accent ? ACCENT_DB : strike.ghost ? GHOST_DB : 0;
  return {
    voice: strike.voice,
    articulation: articulationOf(lesson, strike, how),
    limb: limbOf(lesson, strike.voice, hand),
    role: placed.role,
    mark,
    written: { bar: bar + 1, beat: placed.beat + 1, slot: slot + 1 },
    slots,
    at: timeline.scoreTime(place),
    timeSeconds: timeline.slotSeconds(place),
    levelDb: LeadDb(balance[strike.voice] + touch + (placed.addedDb?.[slot] ?? 0)),
    sticking: hand,
    ...(end ? { heldSeconds: Seconds(timeline.slotSeconds(end) - timeline.slotSeconds(place)) } : {}),
    ...(how.length > 0 ? { how } : {}),
  };
}

function strokesOfCell(of: Played, bar: number, placed: PlacedCell): readonly Stroke[] {
  return struckSlots(placed.cell).map((slot, index) =>
    strokeOf(of, bar, placed, slot, placed.sticking?.[index] ?? null),
  );
}

function limbMoment(stroke: Stroke): string {
  return `${stroke.limb} ${formatFraction(stroke.at)}`;
}

/** The strokes of one bar, without what is muted and without a groove stroke whose limb the ending needs. */
function strokesOfBar(cells: readonly PlacedCell[], mute: ReadonlySet<SoundingVoice>, play: CellPlayer) {
  const taken = new Set(
    cells
      .filter((cell) => cell.role === 'ending')
      .flatMap(play)
      .map(limbMoment),
  );
  const stays = (s: Stroke) => !mute.has(s.voice) && (s.role === 'ending' || !taken.has(limbMoment(s)));
  return cells
    .filter((cell) => !mute.has(cell.voice))
    .flatMap(play)
    .filter(stays);
}

type CellPlayer = (placed: PlacedCell) => readonly Stroke[];

/** A click on a beat of a bar (both from 0). */
function clickOn(timeline: Timeline, bar: number, beat: number, role: 'count-in' | 'click'): Stroke {
  const place = { bar, beat, slot: 0, slots: 1 };
  return {
    voice: 'click',
    articulation: 'normal',
    limb: null,
    role,
    mark: beat === 0 ? 'X' : 'x',
    written: { bar: bar + 1, beat: beat + 1, slot: 1 },
    slots: 1,
    at: timeline.scoreTime(place),
    timeSeconds: timeline.slotSeconds(place),
    levelDb: LeadDb(beat === 0 ? COUNT_IN_DB + ACCENT_DB : COUNT_IN_DB),
    sticking: null,
  };
}

function countInStrokes(lesson: Lesson, timeline: Timeline, bars: number): readonly Stroke[] {
  return Array.from({ length: bars }, (_, index) => index - bars).flatMap((bar) =>
    lesson.meter.beats.map((_, beat) => clickOn(timeline, bar, beat, 'count-in')),
  );
}

/** The clicks that a form asks for. */
function formClicks(timeline: Timeline, planned: readonly PlannedBar[]): readonly Stroke[] {
  return planned.flatMap(({ bar, click = [] }) =>
    click.map((beat) => clickOn(timeline, bar, beat - 1, 'click')),
  );
}

/** Level of a click of count-in and form in dB relative to the lead voice. */
const COUNT_IN_DB = -6;

/** What plays when the first `layers` of a lesson do. */
function joined(lesson: Lesson, layers: number | undefined): Playing {
  return new Set(lesson.layers.slice(0, layers ?? lesson.layers.length).flatMap((layer) => layer.joins));
}

function shift(stroke: Stroke, seconds: Seconds): Stroke {
  return { ...stroke, timeSeconds: Seconds(stroke.timeSeconds + seconds) };
}

function performedBars(
  timeline: Timeline,
  planned: readonly PlannedBar[],
  countIn: number,
): readonly PerformedBar[] {
  const bars = [
    ...Array.from({ length: countIn }, (_, i) => ({
      bar: i - countIn,
      play: 'count-in' as const,
      patternBar: null,
      click: undefined,
    })),
    ...planned,
  ];
  const origin = timeline.barSeconds(-countIn);
  return bars.map(({ bar, play, patternBar, click }) => ({
    bar: bar + 1,
    play,
    patternBar,
    ...(click ? { click } : {}),
    startSeconds: Seconds(timeline.barSeconds(bar) - origin),
    durationSeconds: Seconds(timeline.barSeconds(bar + 1) - timeline.barSeconds(bar)),
  }));
}

/**
 * The strokes of an exercise in a form, over the groove of its section; without an exercise, of the first section's
 * groove alone.
 * @returns strokes in order of time, each inside the form, with levels in dB relative to the lead voice.
 * @throws RangeError when the exercise does not exist.
 */
export function perform(whole: Lesson, options: PerformOptions): Performance {
  const lesson = sectionOf(whole, options.exercise);
  const exercise = options.exercise === null ? null : exerciseOf(lesson, options.exercise);
  const map = options.tempo ?? constantTempo(options.bpm ?? lesson.tempo.startBpm);
  const timeline = createTimeline(lesson.meter, lesson.feel, map);
  const planned = planBars(options.form, exercise ? orderOf(exercise) : [0]);
  const countIn = options.form.countInBars;
  const countInSeconds = Seconds(0 - timeline.barSeconds(-countIn));
  const mute: ReadonlySet<SoundingVoice> = new Set(options.mute);
  const playing = joined(lesson, options.layers);
  const cells = planned.map((bar) => cellsOfBar(lesson, exercise, bar, playing));
  const form = cells.flatMap((inBar, bar) =>
    strokesOfBar(inBar, mute, (placed) => strokesOfCell({ lesson, exercise, timeline, cells }, bar, placed)),
  );
  const clicks = [...countInStrokes(lesson, timeline, countIn), ...formClicks(timeline, planned)];
  const strokes = [...clicks, ...form];
  return {
    strokes: strokes.map((s) => shift(s, countInSeconds)).sort((a, b) => a.timeSeconds - b.timeSeconds),
    bars: performedBars(timeline, planned, countIn),
    countInSeconds,
    durationSeconds: Seconds(timeline.barSeconds(planned.length) + countInSeconds),
  };
}
