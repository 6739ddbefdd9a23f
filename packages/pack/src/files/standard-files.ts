/** MIDI and MusicXML: a file for the sheet and one for each exercise. */
import { barsOf, exerciseOf, type Form, type Lesson, type PerformOptions, perform } from '@shedbook/core';
import { type MidiSection, writeMidi, writeMidiSheet, writeMusicXml } from '@shedbook/exchange';
import { fileNumber, type LessonFile, textFile } from './file.ts';

/** A file of one of the two standards. */
export type StandardFile = LessonFile<'midi' | 'musicxml'>;

/** What to write. */
export interface StandardFileOptions {
  /** Numbers of the exercises, from 1; all when left out. */
  readonly exercises?: readonly number[];
  /**
   * What plays: once through the pattern without a count-in, every layer, nothing muted and at the lesson's start tempo
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
function sectionsOf(lesson: Lesson, { exercises, playing }: StandardFileOptions): readonly MidiSection[] {
  const play = (exercise: number | null) =>
    perform(lesson, { form: onceThrough(lesson, exercise), ...playing, exercise });
  if (lesson.exercises.length === 0) return [{ name: lesson.title, performance: play(null) }];
  return lesson.exercises
    .filter(({ number }) => exercises?.includes(number) ?? true)
    .map(({ number, name }) => ({ name: name ?? String(number), performance: play(number) }));
}

function scoreOptions({ exercises, playing }: StandardFileOptions) {
  return {
    ...(exercises ? { exercises } : {}),
    ...(playing?.bpm === undefined ? {} : { bpm: playing.bpm }),
  };
}

/** The sheet as MIDI: every exercise one after another, each with its name as a marker. */
export function writeSheetMidi(lesson: Lesson, options: StandardFileOptions = {}): StandardFile {
  const { title, by, meter } = lesson;
  const content = writeMidiSheet(sectionsOf(lesson, options), { title, by, meter });
  return { path: 'sheet.mid', kind: 'midi', exercise: null, content };
}

/** The sheet as MusicXML. */
export function writeSheetScore(lesson: Lesson, options: StandardFileOptions = {}): StandardFile {
  const text = writeMusicXml(lesson, scoreOptions(options));
  return { ...textFile('sheet.musicxml', text), kind: 'musicxml', exercise: null };
}

function exerciseFiles(
  lesson: Lesson,
  exercise: number,
  options: StandardFileOptions,
): readonly StandardFile[] {
  const { title, by, meter, exercises } = lesson;
  const { name } = exerciseOf(lesson, exercise);
  const path = `exercises/${fileNumber(exercise, exercises.length)}`;
  const one = { ...options, exercises: [exercise] };
  const midi = sectionsOf(lesson, one).map(({ performance }) =>
    writeMidi(performance, { title: `${title}, exercise ${exercise}${name ? `: ${name}` : ''}`, by, meter }),
  );
  const score = textFile(`${path}.musicxml`, writeMusicXml(lesson, scoreOptions(one)));
  return [
    ...midi.map((content): StandardFile => ({ path: `${path}.mid`, kind: 'midi', exercise, content })),
    { ...score, kind: 'musicxml', exercise },
  ];
}

/** MIDI and MusicXML of the sheet and of each exercise. */
export function writeStandardFiles(
  lesson: Lesson,
  options: StandardFileOptions = {},
): readonly StandardFile[] {
  const numbers = lesson.exercises.map((exercise) => exercise.number);
  const asked = numbers.filter((number) => options.exercises?.includes(number) ?? true);
  return [
    ...asked.flatMap((exercise) => exerciseFiles(lesson, exercise, options)),
    writeSheetMidi(lesson, options),
    writeSheetScore(lesson, options),
  ];
}
