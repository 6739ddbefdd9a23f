/**
 * What `build` is asked for, checked against the lesson.
 *
 * Conventions: tempi in quarter notes a minute; exercises and layers count from 1.
 */
import {
  Bpm,
  type Form,
  LESSON_TEMPI,
  type Lesson,
  Lufs,
  PAPERS,
  type Paper,
  sectionsOf,
  type Voice,
} from '@shedbook/core';
import type { PerformanceFile } from '@shedbook/host/film';
import { AUDIO_FORMATS, type AudioFormat } from '@shedbook/pack';
import { RECORDING_LUFS } from '@shedbook/sound';
import { type ClickAsked, type ClickOptionsAsked, readClick } from '../click-options.ts';
import { readChoice, readExerciseList, readVoices, refuseOption as refuse, requireForm } from '../options.ts';
import { readPerformances } from '../read-performances.ts';

/** The options of the command line as they come, all text. */
export interface BuildOptions extends ClickOptionsAsked {
  readonly out: string;
  readonly audio?: string;
  readonly tempo?: string;
  readonly form?: string;
  readonly layers?: string;
  readonly mute?: string;
  readonly exercise?: string;
  readonly paper?: string;
  readonly loudness?: string;
  readonly kit?: string;
  readonly dry?: boolean;
  readonly pack?: boolean;
  readonly performance?: readonly string[];
  readonly films?: boolean;
  readonly json?: boolean;
}

/** The options made sense of. */
export interface BuildRequest {
  readonly out: string;
  readonly audio: AudioFormat | null;
  /** Null for the start tempo of each section. */
  readonly bpm: Bpm | null;
  /** The form that was asked for, or null. */
  readonly form: Form | null;
  /** How many layers play; several when each stage is wanted. */
  readonly layers: readonly number[];
  readonly mute: readonly Voice[];
  /** Numbers of the exercises that are built. */
  readonly exercises: readonly number[];
  readonly paper: Paper | null;
  readonly loudnessLufs: Lufs;
  readonly kit: string | null;
  /** Without room. */
  readonly dry: boolean;
  /** Whether a take-home pack is made. */
  readonly pack: boolean;
  /** Performances that the pack demonstrates exercises with. */
  readonly performances: readonly PerformanceFile[];
  /** Whether the pack has a film of each exercise that is built. */
  readonly films: boolean;
  /** The click that plays along, or null. */
  readonly click: ClickAsked;
  /** Whether it is counted aloud on every click. */
  readonly countAloud: boolean;
}

/** What a recording may be as loud as, in LUFS. */
const LOUDNESS = { least: -40, most: -6 };

function readNumber(
  option: string,
  text: string,
  unit: 'bpm' | 'lufs',
  { least, most }: { readonly least: number; readonly most: number },
): number {
  const value = Number(text);
  if (text.trim() !== '' && value >= least && value <= most) return value;
  return refuse(option, text, (expected) => expected[unit]({ least, most }));
}

function readLayers(text: string | undefined, lesson: Lesson): readonly number[] {
  // A section with fewer layers has all of them at its last.
  const [most] = sectionsOf(lesson).toSorted((a, b) => b.layers.length - a.layers.length);
  const { layers } = most as Lesson;
  const all = layers.length;
  if (text === undefined) return [all];
  if (text === 'each') return layers.map((_, index) => index + 1);
  const names = layers.map((layer, index) => `${index + 1} ${layer.joins.join(' + ')}`).join(', ');
  const value = Number(text);
  if (Number.isInteger(value) && value >= 1 && value <= all) return [value];
  return refuse('layers', text, (expected) => expected.layers({ names }));
}

/** What only a pack has; null where it is not asked for. @throws InputError where no pack is made */
function packed<T>(option: 'performance' | 'films', options: BuildOptions, read: () => T): T | null {
  if (options[option] === undefined) return null;
  return options.pack ? read() : refuse(option, `${options[option]}`, (expected) => expected.withPack);
}

/**
 * Makes sense of the options.
 * @throws InputError with what was found and what was expected.
 */
export function readBuildRequest(options: BuildOptions, lesson: Lesson): BuildRequest {
  const { audio, tempo, form, mute, paper, loudness, kit } = options;
  return {
    out: options.out,
    audio: audio === undefined ? null : readChoice('audio', audio, AUDIO_FORMATS),
    bpm: tempo === undefined ? null : Bpm(readNumber('tempo', tempo, 'bpm', LESSON_TEMPI)),
    form: form === undefined ? null : requireForm(lesson, form),
    layers: readLayers(options.layers, lesson),
    mute: mute === undefined ? [] : readVoices('mute', mute),
    exercises: readExerciseList('exercise', options.exercise, lesson),
    paper: paper === undefined ? null : readChoice('paper', paper, PAPERS),
    loudnessLufs:
      loudness === undefined ? RECORDING_LUFS : Lufs(readNumber('loudness', loudness, 'lufs', LOUDNESS)),
    kit: kit ?? null,
    dry: options.dry ?? false,
    pack: options.pack ?? false,
    performances: packed('performance', options, () => readPerformances(options, lesson)) ?? [],
    films: packed('films', options, () => true) ?? false,
    click: readClick(options, lesson),
    countAloud: options.countAloud ?? false,
  };
}
