/**
 * A MIDI file to exercises of a lesson.
 *
 * Conventions: leading bars with clicks and nothing else are a count-in and are skipped. Accents and ghost notes
 * are read against the plain level of their voice: as given, or the median of the voice. A note on no slot is
 * reported and listed, never moved further than the tolerance and never lost.
 */

import type { Grid, PlacedStroke } from '@shedbook/core';
import {
  ACCENT_DB,
  assembleParts,
  Bpm,
  type Exercise,
  type Feel,
  GHOST_DB,
  groupBy,
  type Meter,
  meter,
  quantise,
  strikeOf,
  swingAt,
  toNumber,
  type Voice,
} from '@shedbook/core';
import { lowerMedian } from '@shedbook/signal';
import type { MidiFact } from './midi-fact.ts';
import { foldOrnaments } from './ornaments.ts';
import type { ByteProblem } from './problem.ts';
import type { MidiNote, MidiTake } from './read.ts';

/** How a take is to be read; each has a default. */
export interface ImportOptions {
  /** The file's own when left out, or 4/4 where it has none. */
  readonly meter?: Meter;
  /** How the file was played; `even` when left out. */
  readonly feel?: Feel;
  /** The whole file as one exercise when left out. */
  readonly barsPerExercise?: number;
  /** Furthest that a note may lie from its slot, as a fraction of the beat; by the player's own spread when left out. */
  readonly toleranceBeats?: number;
  /** Level of a plain stroke of each voice in dB, as in a lesson. */
  readonly balance?: Readonly<Partial<Record<Voice, number>>>;
}

/** The exercises found, and what was not taken in. */
export interface MidiImport {
  readonly meter: Meter;
  /** Quarter notes a minute at the first imported bar. */
  readonly bpm: Bpm;
  readonly exercises: readonly Exercise[];
  /** Notes that fit no slot, in order of time. */
  readonly misfits: readonly MidiNote[];
  readonly problems: readonly ByteProblem[];
}

interface ImportedStroke extends PlacedStroke {
  readonly note: MidiNote;
}

/** Most bars that are read: two hours of 4/4 at 130. What lies after them is listed, not read. */
export const MAX_BARS = 4000;

type DrumNote = MidiNote & { readonly voice: Voice };

function isDrumNote(note: MidiNote): note is DrumNote {
  return note.voice !== 'click';
}

function problem(code: string, found: MidiFact, expected: MidiFact, repair: MidiFact): ByteProblem {
  return { code, severity: 'warning', offset: null, found, expected, repair };
}

/** Earliest that a note may come and still belong to the bar after it, as a part of the bar. */
const EARLY_BAR = 1 / 32;

/** Bars at the start that have clicks and nothing else. */
function countInBars(take: MidiTake, bar: number): number {
  const barOf = (note: MidiNote) => Math.floor(toNumber(note.at) / bar + EARLY_BAR);
  const clicked = new Set(take.notes.filter((note) => note.voice === 'click').map(barOf));
  const drummed = new Set(take.notes.filter(isDrumNote).map(barOf));
  let bars = 0;
  while (clicked.has(bars) && !drummed.has(bars)) bars += 1;
  return bars;
}

/** Folds the ornaments of a voice that can be written with them. */
function foldVoice(voice: Voice, notes: readonly DrumNote[]): readonly DrumNote[] {
  return strikeOf(voice, 'f') ? foldOrnaments(notes) : notes;
}

/**
 * Accent and ghost notes of a voice against its plain level. Where none is given it is one that was struck: the mean of
 * the two in the middle may lie between plain strokes and accents.
 */
function touchesOf(voice: Voice, notes: readonly DrumNote[], options: ImportOptions) {
  const plainDb = options.balance?.[voice] ?? lowerMedian(notes.map((note) => note.levelDb));
  return notes.map((note) => {
    const relativeDb = note.levelDb - plainDb;
    return { accent: relativeDb > ACCENT_DB / 2, ghost: relativeDb < GHOST_DB / 2 };
  });
}

/** Every note of the drum set on its written place, or among the misfits. */
function placeNotes(take: MidiTake, origin: number, grid: Grid, options: ImportOptions) {
  const byVoice = groupBy(take.notes.filter(isDrumNote), (note) => note.voice);
  const voices = [...byVoice].map(([voice, notes]) => ({ voice, notes: foldVoice(voice, notes) }));
  const places = quantise(
    voices.map(({ notes }) => notes.map((note) => toNumber(note.at) - origin)),
    grid,
  );
  const strokes: ImportedStroke[] = [];
  const misfits: MidiNote[] = [];
  voices.forEach(({ voice, notes }, v) => {
    const touches = touchesOf(voice, notes, options);
    notes.forEach((note, i) => {
      const place = places[v]?.[i];
      const touch = touches[i];
      if (!place || !touch || place.bar < 0 || place.bar >= MAX_BARS) misfits.push(note);
      else strokes.push({ ...place, ...touch, voice, articulation: note.articulation, note });
    });
  });
  return { strokes, misfits };
}

function meterOf(take: MidiTake, options: ImportOptions, problems: ByteProblem[]): Meter {
  const first = take.meters[0]?.meter ?? meter('4/4');
  const wanted = options.meter ?? first;
  const other = take.meters.find(
    (each) => each.meter.bar.num * wanted.bar.den !== wanted.bar.num * each.meter.bar.den,
  );
  if (other) {
    const found = { fact: 'change-of-meter', meter: other.meter.text } as const;
    const expected = { fact: 'meter-throughout', meter: wanted.text } as const;
    problems.push(problem('midi-meter', found, expected, { fact: 'midi-read-as', meter: wanted.text }));
  }
  return wanted;
}

function exercisesOf(strokes: readonly ImportedStroke[], wanted: Meter, size: number, bars: number) {
  const byExercise = groupBy(strokes, (stroke) => Math.floor(stroke.bar / size));
  const misfits: MidiNote[] = [];
  const exercises: Exercise[] = [];
  for (let index = 0; index * size < bars; index += 1) {
    const mine = (byExercise.get(index) ?? []).map((stroke) => ({ ...stroke, bar: stroke.bar % size }));
    const { parts, misfits: left } = assembleParts(mine, wanted, size);
    misfits.push(...left.map((stroke) => stroke.note));
    if (parts.length > 0) {
      exercises.push({ number: exercises.length + 1, name: null, parts, sticking: null, notes: null });
    }
  }
  return { exercises, misfits };
}

/** The exercises in a take; what fits no slot is listed and reported. */
export function importMidi(take: MidiTake, options: ImportOptions = {}): MidiImport {
  const problems: ByteProblem[] = [...take.problems];
  const wanted = meterOf(take, options, problems);
  const bar = toNumber(wanted.bar);
  const origin = countInBars(take, bar) * bar;
  const bpm = take.tempoMap.findLast((tempo) => toNumber(tempo.at) <= origin)?.bpm ?? Bpm(120);
  const grid: Grid = {
    meter: wanted,
    swing: swingAt(options.feel ?? { kind: 'even' }, bpm),
    toleranceBeats: options.toleranceBeats ?? null,
  };
  const { strokes, misfits: unplaced } = placeNotes(take, origin, grid, options);
  const bars = strokes.reduce((most, stroke) => Math.max(most, stroke.bar + 1), 0);
  const { exercises, misfits: taken } = exercisesOf(
    strokes,
    wanted,
    options.barsPerExercise ?? (bars || 1),
    bars,
  );
  const misfits = [...unplaced, ...taken].sort((a, b) => a.ticks - b.ticks);
  if (misfits.length > 0) {
    const found = { fact: 'midi-notes-on-no-slot', notes: misfits.length } as const;
    const expected = { fact: 'midi-notes-on-slots', bars: MAX_BARS } as const;
    problems.push(problem('midi-misfit', found, expected, { fact: 'midi-left-out' }));
  }
  return { meter: wanted, bpm, exercises, misfits, problems };
}
