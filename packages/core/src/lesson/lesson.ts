/**
 * A lesson with every default filled in: what the file says, ready to be computed with.
 *
 * Conventions: tempi in quarter notes a minute; levels in dB relative to the lead voice; bars and beats as
 * counts; patterns parsed.
 */

import type { Feel } from '../feel/feel.ts';
import type { Beater, Limb, SetUp, Voice } from '../kit/voice.ts';
import type { Cell } from '../rhythm/cell.ts';
import type { Meter } from '../rhythm/meter.ts';
import type { Pattern } from '../rhythm/pattern.ts';
import type { Bpm, LeadDb } from '../units.ts';
import type { ComposeSettings } from './compose-settings.ts';
import type { Expression } from './expression.ts';
import type { Hands } from './hand.ts';
import type { HowByVoice } from './how.ts';
import type { Medium } from './media.data.ts';
import type { Numbering } from './numbering.ts';
import type { Repetition } from './repeats.ts';

/** A voice that repeats under everything. */
export interface GroovePart {
  readonly voice: Voice;
  readonly pattern: Pattern;
}

/** What may happen inside a beat. */
export interface VocabularyCell {
  readonly cell: Cell;
  /** A teacher's own name, or null. */
  readonly name: string | null;
}

/** What one voice plays in an exercise. */
export interface ExercisePart {
  readonly voice: Voice;
  readonly pattern: Pattern;
  /** One hand for each stroke of a voice that is not the first, where written; ask `handsOf`. */
  readonly hands?: Hands;
}

/** How an exercise is shown. */
export interface Example {
  /** How often it goes round before it is shown in a form. */
  readonly times: number;
  /** Name of the form; null for the lesson's phrase form. */
  readonly form: string | null;
}

/** What an exercise was copied from, by lasting names. */
export interface Origin {
  readonly lesson: string;
  readonly exercise: string;
}

/** A numbered pattern. Its parts replace the groove's for the voices they name. */
export interface Exercise extends Expression, Repetition {
  /** From 1, rising in the order of the sheet; ask `exerciseLabel` for what people read. */
  readonly number: number;
  /** Its lasting name where it is written; left out where it goes by its patterns (see `exerciseKey`). */
  readonly id?: string;
  /** Number, from 2, of those that go by the same patterns over other grooves; left out for the first. */
  readonly nth?: number;
  /** What it was copied from; left out where that is not written. */
  readonly from?: Origin;
  readonly name: string | null;
  /** At least one; the comping voice's first. All have the same number of bars. */
  readonly parts: readonly ExercisePart[];
  /** One hand for each stroke of the first part, or null; ask `handsOf`. */
  readonly sticking: Hands | null;
  readonly notes: string | null;
  /** How voices are played while it does, where it says so. */
  readonly how?: HowByVoice;
  /** Pictures, sound and video of it; left out where there are none. */
  readonly media?: readonly Medium[];
  /** How it is shown before it is played; left out where it is no example. */
  readonly example?: Example;
  /** Whether it stays in its place when a page is composed anew; left out where it need not. */
  readonly keep?: true;
}

/** A fixed accent that replaces what the comping voice has on one beat. */
export interface Ending {
  /** Beat of the last bar, from 1. */
  readonly beat: number;
  /** What is struck in that beat, e.g. `..X`. */
  readonly cell: Cell;
  readonly voices: readonly Voice[];
}

/** Bars that play one thing. */
export interface FormSection {
  readonly play: 'pattern' | 'time' | 'rest';
  readonly bars: number;
  /** The accent that its last bar ends on, or null. */
  readonly ending: Ending | null;
  /** Beats that click, from 1, whatever else is chosen; left out where the form says nothing of the click. */
  readonly click?: readonly number[];
}

/** A phrase form: sections of bars and how often they are gone through. */
export interface Form {
  readonly name: string;
  readonly sections: readonly FormSection[];
  /** How often the sections are gone through. */
  readonly repeat: number;
  /** Bars of click before the first bar. */
  readonly countInBars: number;
}

/** A stage of building the groove up: the parts that join at this stage. */
export interface Layer {
  /** Voices of the groove that join; `pattern` is the exercise. */
  readonly joins: readonly (Voice | 'pattern')[];
}

/** What a sheet is made for: paper, or a tablet held upright. */
export const PAPERS = ['A4', 'Letter', 'A5', 'tablet'] as const;
/** A size of page. */
export type Paper = (typeof PAPERS)[number];

/** How the printed page looks. */
export interface SheetSettings {
  readonly paper: Paper;
  /** Counts under the notes. */
  readonly counts: boolean;
  readonly stickings: boolean;
  readonly legend: boolean;
  /** Small boxes to tick off tempi. */
  readonly tickBoxes: boolean;
  /** `compact`: the comping voice alone on one line; `full`: the whole groove in every exercise. */
  readonly staff: 'compact' | 'full';
  /** Size of the notation as a ratio to the default, 0.6–2. */
  readonly scale: number;
  /** Whether exercises have one row of numbers, or begin anew in each section; where it is not divided it is one row. */
  readonly numbering: Numbering;
  /** Exercises on each page, smaller where they would not fit; null for as many as go well. */
  readonly perPage: number | null;
}

/** Where a student starts, where to, and by which steps; in quarter notes a minute. */
export interface Tempo {
  readonly startBpm: Bpm;
  readonly goalBpm: Bpm;
  readonly stepBpm: Bpm;
}

/**
 * A whole lesson, or one section of it with everything filled in that it takes from the lesson. Only a section knows
 * what is played: ask `sectionOf` for the one that an exercise stands in.
 */
export interface Lesson {
  readonly version: number;
  /** Its lasting name where it is written, or null: ask `lessonKey`. */
  readonly id: string | null;
  /** Lasting name of the lesson that it is a copy of, or null: its exercises are those of that lesson. */
  readonly from: string | null;
  readonly title: string;
  readonly by: string | null;
  /** What stands over a section, or null; null for a whole lesson, which has a title. */
  readonly heading: string | null;
  /** Heading of the section that a student must have first; left out where there is none (see `sectionBefore`). */
  readonly before?: string;
  /** What the teacher writes to it, as small Markdown (see `readProse`), or null. */
  readonly text: string | null;
  /** Pictures, sound and video beside it; left out where there are none (those in its text apart: see `mediaOf`). */
  readonly media?: readonly Medium[];
  /** Its sections in order; empty where it is not divided, and in a section. */
  readonly sections: readonly Lesson[];
  readonly meter: Meter;
  readonly tempo: Tempo;
  readonly feel: Feel;
  readonly setUp: SetUp;
  /** What the hands hold. */
  readonly playedWith: Beater;
  readonly groove: readonly GroovePart[];
  /** The voice that carries the time; its plain strokes are 0 dB. */
  readonly lead: Voice;
  /** The voice that plays the exercises. */
  readonly comping: Voice;
  /** Level of a plain stroke of every voice, in dB relative to the lead voice. */
  readonly balance: Readonly<Record<Voice, LeadDb>>;
  /** Level of a plain stroke of every voice where an exercise plays it, in dB relative to the lead voice. */
  readonly exerciseBalance: Readonly<Record<Voice, LeadDb>>;
  /** Limb of every voice in this lesson. */
  readonly limbs: Readonly<Record<Voice, Limb>>;
  /** How voices are played, where that is said. */
  readonly how: HowByVoice;
  readonly vocabulary: readonly VocabularyCell[];
  /** Those of all its sections. */
  readonly exercises: readonly Exercise[];
  /** The lesson's own forms first, then the built-in ones. */
  readonly forms: readonly Form[];
  readonly layers: readonly Layer[];
  readonly sheet: SheetSettings;
  readonly compose: ComposeSettings;
  /** Address of the practice page on the web, or null. */
  readonly practicePage: string | null;
}
