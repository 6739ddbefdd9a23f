/**
 * What is heard: what was chosen about the sound, over the lesson as it is now. A choice holds as long as the lesson
 * says what it said; what an edit makes of the lesson is heard at once.
 */
import {
  Bpm,
  type Feel,
  type Form,
  formatFeel,
  formShown,
  type Layer,
  type Lesson,
  readFeel,
  sectionOf,
} from '@shedbook/core';
import { createProgram, loopOneBar, type Program } from '@shedbook/playing';
import type { LiveSettings } from '@shedbook/stand';
import type { ClickChoice, Instead, SoundChoice } from './sound-choice.ts';

/** What is heard, everything filled in. */
export interface Heard {
  /** The section that plays. */
  readonly section: Lesson;
  /** Number of the exercise, or null for time alone. */
  readonly exercise: number | null;
  /** Bar of the exercise that goes round alone, from 0, or null. */
  readonly bar: number | null;
  readonly form: Form;
  /** Layers of the section that play, from 1. */
  readonly layers: number;
  /** Quarter notes a minute. */
  readonly bpm: number;
  /** Text of the feel. */
  readonly feel: string;
  readonly clicks: ClickChoice;
}

/** What was chosen, while the lesson says what it said then. */
function standing<T>(instead: Instead<T> | null, says: T): T {
  return instead && instead.of === says ? instead.value : says;
}

/** Layers up to the one that something joins with, from 1; all where nothing does. */
export function layersUpTo(layers: readonly Layer[], join: SoundChoice['upTo']): number {
  const index = join === null ? -1 : layers.findIndex(({ joins }) => joins.includes(join));
  return index < 0 ? layers.length : index + 1;
}

/** What of a choice of layers is kept: the last that joins; all of them is no choice. */
export function upToLayer(layers: readonly Layer[], count: number): SoundChoice['upTo'] {
  return count >= layers.length ? null : (layers[count - 1]?.joins.at(-1) ?? null);
}

/** What is heard of a lesson. */
export function heardOf(lesson: Lesson, choice: SoundChoice): Heard {
  const found = lesson.exercises.find((each) => each.number === choice.exercise);
  const section = sectionOf(lesson, found?.number ?? null);
  const bars = found?.parts[0]?.pattern.bars.length ?? 0;
  return {
    section,
    exercise: found?.number ?? null,
    bar: choice.bar !== null && choice.bar < bars ? choice.bar : null,
    form: formShown(section, found?.number ?? null, choice.form),
    layers: layersUpTo(section.layers, choice.upTo),
    bpm: standing<number>(choice.bpm, section.tempo.startBpm),
    feel: standing(choice.feel, formatFeel(section.feel)),
    clicks: choice.clicks,
  };
}

/** Beats that click in a meter, from 1. */
function clickBeats({ beats }: ClickChoice, { meter }: Lesson): readonly number[] {
  const all = meter.beats.map((_, index) => index + 1);
  return beats === 'all' ? all : all.filter((beat) => beat % 2 === 0);
}

/** The program of what is heard. */
export function programOf(heard: Heard): Program {
  const { section, exercise, bar, layers, bpm, clicks } = heard;
  const feel: Feel = readFeel(heard.feel) ?? section.feel;
  const form = { ...heard.form, countInBars: clicks.countInBars ?? heard.form.countInBars };
  const falls = { beats: clickBeats(clicks, section), subdivision: clicks.subdivision };
  const request = { exercise, form, layers, bpm: Bpm(bpm), clicks: falls };
  const program = createProgram({ ...section, feel }, request);
  return bar === null ? program : loopOneBar(program, bar);
}

/** What can change while it plays. */
export function settingsOf(
  { bpm }: Pick<Heard, 'bpm'>,
  { click, clicks, mute, trimDb }: SoundChoice,
): LiveSettings {
  return { bpm: Bpm(bpm), click, ...(clicks.gap ? { gap: clicks.gap } : {}), mute, trimDb };
}

/** A tempo or a feel in place of the lesson's. */
export function insteadOf({ section }: Heard, change: { readonly bpm?: number; readonly feel?: string }) {
  return {
    ...(change.bpm === undefined ? {} : { bpm: { value: change.bpm, of: section.tempo.startBpm as number } }),
    ...(change.feel === undefined ? {} : { feel: { value: change.feel, of: formatFeel(section.feel) } }),
  };
}
