/** Standard files: in each format one for the sheet and one for each exercise. */
import {
  barsOf,
  exampleForm,
  exerciseLabel,
  exerciseOf,
  type Form,
  formIn,
  type Lesson,
  type PerformOptions,
  perform,
  printLesson,
  STANDARD_FORMAT_NAMES,
  STANDARD_FORMATS,
  type StandardFormat,
  sectionOf,
} from '@shedbook/core';
import { type MidiSection, writeMidi, writeMidiSheet, writeMusicXml } from '@shedbook/exchange';
import { strToU8 } from 'fflate';
import { fileNumber, type LessonFile } from './file.ts';

/** A file of a standard format. */
export type StandardFile = LessonFile<StandardFormat>;

/** What to write. */
export interface StandardFileOptions {
  /** Numbers of the exercises, from 1; all when left out. */
  readonly exercises?: readonly number[];
  /**
   * What plays: once through the pattern, or as an example is shown in a file of its own, without a count-in, every layer, nothing muted and at the lesson's start tempo
   * where nothing is said. Form, layers and mutes are of MIDI; notation says what stands on the page.
   */
  readonly playing?: Partial<Pick<PerformOptions, 'form' | 'bpm' | 'layers' | 'mute'>>;
}

/** Once through the pattern, without a count-in: what a standard file says of an exercise. */
function onceThrough(lesson: Lesson, exercise: number | null): Form {
  const bars = exercise === null ? 1 : barsOf(exerciseOf(lesson, exercise));
  return { name: 'once', sections: [{ play: 'pattern', bars, ending: null }], repeat: 1, countInBars: 0 };
}

/** What plays, one after another: every exercise; the groove where a lesson has none. */
function playedSections(lesson: Lesson, options: StandardFileOptions): readonly MidiSection[] {
  const { exercises, playing } = options;
  const play = (name: string, exercise: number | null): MidiSection => {
    const section = sectionOf(lesson, exercise);
    const form = playing?.form ? formIn(section, playing.form) : onceThrough(lesson, exercise);
    return { name, meter: section.meter, performance: perform(section, { ...playing, form, exercise }) };
  };
  if (lesson.exercises.length === 0) return [play(lesson.title, null)];
  return lesson.exercises
    .filter(({ number }) => exercises?.includes(number) ?? true)
    .map(({ number, name }) => play(name ?? exerciseLabel(number), number));
}

function scoreOptions({ exercises, playing }: StandardFileOptions) {
  return {
    ...(exercises ? { exercises } : {}),
    ...(playing?.bpm === undefined ? {} : { bpm: playing.bpm }),
  };
}

/** The exercises that are asked for as one MIDI file, one after another, each with its name as a marker. */
function midiOf(lesson: Lesson, options: StandardFileOptions): Uint8Array {
  const { title, by } = lesson;
  const whole = options.exercises === undefined ? { lessonText: printLesson(lesson) } : {};
  return writeMidiSheet(playedSections(lesson, options), { title, by, ...whole });
}

/** One exercise as a MIDI file. */
function midiOfOne(lesson: Lesson, number: number, options: StandardFileOptions): Uint8Array {
  const { title, by } = lesson;
  const { name } = exerciseOf(lesson, number);
  const shown = exampleForm(sectionOf(lesson, number), number);
  const form = options.playing?.form ?? (shown ? { ...shown, countInBars: 0 } : null);
  const playing = { ...options.playing, ...(form ? { form } : {}) };
  const [section] = playedSections(lesson, { exercises: [number], playing });
  if (!section) throw new RangeError(`Internal error: no exercise ${number}`);
  const named = `${title}, exercise ${exerciseLabel(number)}${name ? `: ${name}` : ''}`;
  return writeMidi(section.performance, { title: named, by, meter: section.meter });
}

function scoreOf(lesson: Lesson, options: StandardFileOptions): Uint8Array {
  return strToU8(writeMusicXml(lesson, scoreOptions(options)));
}

interface Writer {
  /** Everything that is asked for, in one file. */
  readonly sheet: (lesson: Lesson, options: StandardFileOptions) => Uint8Array;
  /** One exercise, by its number. */
  readonly exercise: (lesson: Lesson, number: number, options: StandardFileOptions) => Uint8Array;
}

/** What writes each format. */
const WRITERS: Readonly<Record<StandardFormat, Writer>> = {
  musicxml: {
    sheet: scoreOf,
    exercise: (lesson, number, options) => scoreOf(lesson, { ...options, exercises: [number] }),
  },
  midi: { sheet: midiOf, exercise: midiOfOne },
};

/** The sheet as a standard file. */
export function writeStandardSheet(
  lesson: Lesson,
  format: StandardFormat,
  options: StandardFileOptions = {},
): StandardFile {
  const path = `sheet${STANDARD_FORMATS[format].ending}`;
  return { path, kind: format, exercise: null, content: WRITERS[format].sheet(lesson, options) };
}

function exerciseFile(
  lesson: Lesson,
  exercise: number,
  format: StandardFormat,
  options: StandardFileOptions,
): StandardFile {
  const path = `exercises/${fileNumber(exercise, lesson.exercises.length)}${STANDARD_FORMATS[format].ending}`;
  return { path, kind: format, exercise, content: WRITERS[format].exercise(lesson, exercise, options) };
}

/** Files in the order in which they are made: MIDI, then MusicXML. */
const ORDER = STANDARD_FORMAT_NAMES.toReversed();

/** The sheet and each exercise in every standard format. */
export function writeStandardFiles(
  lesson: Lesson,
  options: StandardFileOptions = {},
): readonly StandardFile[] {
  const numbers = lesson.exercises.map((exercise) => exercise.number);
  const asked = numbers.filter((number) => options.exercises?.includes(number) ?? true);
  return [
    ...asked.flatMap((exercise) => ORDER.map((format) => exerciseFile(lesson, exercise, format, options))),
    ...ORDER.map((format) => writeStandardSheet(lesson, format, options)),
  ];
}
