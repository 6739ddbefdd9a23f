/**
 * What a lesson means where it says nothing.
 *
 * Conventions: levels in dB relative to the lead voice.
 * Source: common practice: in swing the ride carries the time and is loudest, comping lies under it, the hi-hat
 * foot under that, and the bass drum is feathered. How many dB is our choice; every lesson can say otherwise.
 */
import { type Beater, VOICES, type Voice } from '../kit/voice.ts';
import { type Cell, cell } from '../rhythm/cell.ts';
import type { Meter } from '../rhythm/meter.ts';
import { Bpm } from '../units.ts';
import type { Ending, Form, GroovePart, Layer, Lesson, SheetSettings, Tempo } from './lesson.ts';

/** Level of a feathered bass drum, in dB. */
export const FEATHERED_DB = -18;

/** Rungs from the start tempo to the goal where no goal is given. */
const DEFAULT_RUNGS = 5;
const DEFAULT_STEP_BPM = 8;
const DEFAULT_START_BPM = 80;

const UNDER_THE_RIDE: Readonly<Record<Voice, number>> = {
  ride: 0,
  hihat: 0,
  'hihat-open': 0,
  'hihat-foot': -8,
  bass: FEATHERED_DB,
  snare: -4,
  sidestick: -5,
  rimshot: -1,
  crash: 0,
  'tom-high': -4,
  'tom-mid': -4,
  'tom-low': -4,
  'tom-floor': -4,
  splash: 0,
  china: 0,
  cowbell: -2,
  clap: 0,
};

const BACKBEAT: Readonly<Record<Voice, number>> = {
  ...UNDER_THE_RIDE,
  bass: 0,
  snare: 0,
  sidestick: -2,
  rimshot: 2,
  crash: 2,
  'tom-high': 0,
  'tom-mid': 0,
  'tom-low': 0,
  'tom-floor': 0,
  splash: 2,
  china: 2,
  cowbell: 0,
  clap: 0,
};

/**
 * Levels that a lesson starts from: under a ride the bass drum is feathered, under anything else it is not. Whatever leads
 * is what the others are measured by: where only a foot keeps time, they are not to be played as loud as can be.
 */
export function defaultBalance(lead: Voice): Readonly<Record<Voice, number>> {
  return { ...(lead === 'ride' ? UNDER_THE_RIDE : BACKBEAT), [lead]: 0 };
}

/** A tempo from a start alone, in quarter notes a minute. */
export function fillTempo(start = DEFAULT_START_BPM, goal?: number, step = DEFAULT_STEP_BPM): Tempo {
  return { startBpm: Bpm(start), goalBpm: Bpm(goal ?? start + DEFAULT_RUNGS * step), stepBpm: Bpm(step) };
}

function eachBeat(
  meter: Meter,
  at: (beat: number) => string,
): { readonly bars: readonly (readonly Cell[])[] } {
  return { bars: [meter.beats.map((_, beat) => cell(at(beat)))] };
}

/** A swing groove for a meter: skip notes after 2 and 4 (after every beat in compound meters), foot on 2 and 4. */
export function defaultGroove(meter: Meter): readonly GroovePart[] {
  const skip = (beat: number) => meter.compound || beat % 2 === 1;
  return [
    { voice: 'ride', pattern: eachBeat(meter, (beat) => (skip(beat) ? 'x.x' : 'x')) },
    { voice: 'hihat-foot', pattern: eachBeat(meter, (beat) => (beat % 2 === 1 ? 'x' : '.')) },
    { voice: 'bass', pattern: eachBeat(meter, () => 'x') },
  ];
}

/** Layers in the order a teacher builds a groove: time, hi-hat foot, bass drum, the rest, then the pattern. */
export function defaultLayers(groove: readonly GroovePart[], lead: Voice): readonly Layer[] {
  const order = [lead, 'hihat-foot', 'bass', ...VOICES];
  const voices = groove.map((part) => part.voice).toSorted((a, b) => order.indexOf(a) - order.indexOf(b));
  const layers = voices.map((voice): Layer => ({ joins: [voice] }));
  return [...layers, { joins: ['pattern'] }];
}

/** The last slot of a beat, accented, in the subdivision that the lead voice has there or the vocabulary asks for. */
export function defaultEndingCell(slots: number): Cell {
  return cell(`${'.'.repeat(slots - 1)}X`);
}

/** What an ending strikes, as the trade's drill has it: rim shot and crash, the snare with them where no stick hits a rim. */
export function endingVoices(playedWith: Beater): Ending['voices'] {
  return [playedWith === 'brushes' ? 'snare' : 'rimshot', 'crash'];
}

/** What the forms that every lesson has are made for. */
export interface BuiltInFor {
  readonly beats: number;
  /** Slots of the beat that an ending falls on. */
  readonly endingSlots: number;
  readonly playedWith: Beater;
}

/** Forms that every lesson has unless it names its own the same. */
export function builtInForms({ beats, endingSlots, playedWith }: BuiltInFor): readonly Form[] {
  const ending = { beat: beats, cell: defaultEndingCell(endingSlots), voices: endingVoices(playedWith) };
  const pattern = (bars: number) => ({ play: 'pattern' as const, bars, ending: null });
  const time = (bars: number) => ({ play: 'time' as const, bars, ending: null });
  return [
    { name: 'loop', sections: [pattern(4)], repeat: 1, countInBars: 1 },
    { name: 'four and two', sections: [{ ...pattern(4), ending }, time(2)], repeat: 2, countInBars: 1 },
    { name: 'time', sections: [time(4)], repeat: 1, countInBars: 1 },
  ];
}

/** Whether a form is as every lesson has it: nothing that a teacher wrote. */
export function isBuiltInForm(
  form: Form,
  { meter, playedWith }: Pick<Lesson, 'meter' | 'playedWith'>,
): boolean {
  const ending = form.sections.find((section) => section.ending !== null)?.ending;
  const endingSlots = ending?.cell.marks.length ?? 1;
  const all = builtInForms({ beats: meter.beats.length, endingSlots, playedWith });
  return all.some((each) => JSON.stringify(each) === JSON.stringify(form));
}

/** The sheet where nothing is said. */
export const DEFAULT_SHEET: SheetSettings = {
  paper: 'A4',
  counts: false,
  stickings: true,
  legend: true,
  tickBoxes: true,
  staff: 'compact',
  scale: 1,
  numbering: 'through',
  perPage: null,
};
