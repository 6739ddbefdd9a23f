/** A MusicXML or MIDI file as the text of a new lesson. */
import {
  type Bpm,
  bringWithin,
  type Exercise,
  exerciseToData,
  type Feel,
  formatFeel,
  formatPattern,
  LESSON_TEMPI,
  type Meter,
  meter as meterOf,
} from '@shedbook/core';
import { findGroove, importMidi, readMidi, readMusicXmlFile } from '@shedbook/exchange';
import { type FaultFact, faultFact } from '@shedbook/words';
import { Document } from 'yaml';

/** What became of a file: a text, or the first problem that left none. */
export type ImportOutcome =
  | { readonly kind: 'lesson'; readonly text: string }
  | { readonly kind: 'refused'; readonly why: FaultFact };

interface Found {
  readonly title: string;
  readonly by: string | null;
  readonly meter: Meter | null;
  readonly bpm: Bpm | null;
  readonly feel: Feel | null;
  readonly exercises: readonly Exercise[];
}

/** Exercises of a lesson at most, and characters of its title: the rest of a longer file is left out. */
const MOST_EXERCISES = 1000;
const MOST_CHARACTERS = 200;

function textOf({ title, by, meter, bpm, feel, exercises: all }: Found): string {
  const { groove, exercises } = findGroove(all.slice(0, MOST_EXERCISES), meter ?? PLAIN_METER);
  const tempo = bpm === null ? null : bringWithin(LESSON_TEMPI, Math.round(bpm));
  const data = {
    title: title.slice(0, MOST_CHARACTERS),
    ...(by ? { by: by.slice(0, MOST_CHARACTERS) } : {}),
    ...(meter ? { meter: meter.text } : {}),
    ...(tempo === null ? {} : { tempo }),
    ...(feel ? { feel: formatFeel(feel) } : {}),
    // Said also where there is none: what a lesson plays that says nothing is ours, and not the file's.
    groove: Object.fromEntries(groove.map(({ voice, pattern }) => [voice, formatPattern(pattern)])),
    exercises: exercises.map((exercise) => exerciseToData(exercise, 'snare')),
  };
  return new Document(data).toString({ lineWidth: 0 });
}

/** The meter where a file says none. */
const PLAIN_METER = meterOf('4/4');

/** What is wrong with a file that can be read and has nothing in it for drums. */
const NO_NOTES: FaultFact = {
  fact: 'fault',
  found: { fact: 'midi-no-drum-notes' },
  expected: { fact: 'musicxml-drum-voice' },
};

function bareName(file: string): string {
  return file.replace(/\.[^.]+$/, '') || 'Imported lesson';
}

function importMidiFile(bytes: Uint8Array, file: string): ImportOutcome {
  const take = readMidi(bytes);
  const error = take.problems.find((problem) => problem.severity === 'error');
  if (error) return { kind: 'refused', why: faultFact(error) };
  if (take.lessonText !== null) return { kind: 'lesson', text: take.lessonText };
  const { exercises, meter, bpm } = importMidi(take, { barsPerExercise: 1 });
  if (exercises.length === 0) return { kind: 'refused', why: NO_NOTES };
  const found = { title: bareName(file), by: null, meter, bpm, feel: null, exercises };
  return { kind: 'lesson', text: textOf(found) };
}

function importScore(bytes: Uint8Array, file: string): ImportOutcome {
  const reading = readMusicXmlFile(bytes, file);
  const error = reading.problems.find((problem) => problem.severity === 'error');
  if (error) return { kind: 'refused', why: faultFact(error) };
  if (reading.lessonText !== null) return { kind: 'lesson', text: reading.lessonText };
  if (reading.exercises.length === 0) {
    return { kind: 'refused', why: NO_NOTES };
  }
  return { kind: 'lesson', text: textOf({ ...reading, title: reading.title ?? bareName(file) }) };
}

/** Reads a file by its first bytes, not by its name. Source: Standard MIDI Files 1.0: a file begins with `MThd`. */
export function importLesson(bytes: Uint8Array, file: string): ImportOutcome {
  const isMidi = String.fromCharCode(...bytes.subarray(0, 4)) === 'MThd';
  return isMidi ? importMidiFile(bytes, file) : importScore(bytes, file);
}
