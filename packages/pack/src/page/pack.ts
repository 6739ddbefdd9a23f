/**
 * What a take-home pack says of itself in `pack.json`: everything that the practice room needs of a lesson without
 * an engraver or a reader of lesson files.
 *
 * Conventions: millimetres from a tile's upper left corner, to 0.01; bars, beats and slots from 1; paths relative to
 * the pack's folder, with slashes.
 */
import type { Lesson, SetUp, Voice } from '@shedbook/core';
import type { Demonstration } from '@shedbook/playing';
import type { FileKind } from '../files/file.ts';

/** The format of `pack.json` that this program writes. */
export const PACK_FORMAT = 1;

/** One slot of one voice on a tile. */
export interface PackSlot {
  readonly beat: number;
  readonly slot: number;
  /** Slots of the beat. */
  readonly slots: number;
  readonly voice: Voice;
  readonly xMm: number;
  readonly yMm: number;
  readonly struck: boolean;
}

/** One engraved bar. */
export interface PackBar {
  readonly bar: number;
  /** Path of its SVG. */
  readonly tile: string;
  readonly widthMm: number;
  readonly heightMm: number;
  /** Top and bottom staff line; the same for a staff of one line. */
  readonly staffTopMm: number;
  readonly staffBottomMm: number;
  /** The bar in words, by its counts, in English. */
  readonly description: string;
  readonly slots: readonly PackSlot[];
  /** The bracket over it, where it lies in an ending: its text where it begins, and whether it goes on or stays open. */
  readonly ending?: { readonly text: string | null; readonly isOpen: boolean };
}

/** An exercise as it is shown; all else about it stands in the lesson. */
export interface PackExercise {
  readonly number: number;
  /** What the exercise itself plays. */
  readonly own: readonly PackBar[];
  /** The whole groove with the exercise in it, until all begins anew. */
  readonly full: readonly PackBar[];
}

/** A file to take along. */
export interface PackDownload {
  readonly path: string;
  readonly kind: Exclude<FileKind, 'page'>;
  /** The exercise it is of, or null for the whole sheet. */
  readonly exercise: number | null;
  readonly bytes: number;
}

/** An exercise as its teacher plays it, and where the recording lies. */
export interface PackDemonstration extends Demonstration {
  readonly path: string;
  readonly bytes: number;
}

/** A file of the teacher's own. */
export interface PackMedium {
  /** Its path in the lesson. */
  readonly of: string;
  /** Where it lies in the pack, named by its content. */
  readonly path: string;
  readonly bytes: number;
  /** Of a picture; left out for any other. */
  readonly widthPx?: number;
  /** Of a picture; left out for any other. */
  readonly heightPx?: number;
}

/** What the teacher set of a pack's lesson for the student whom it is for. */
export interface PackAssignment {
  /** Lasting name of the exercise. */
  readonly exercise: string;
  /** Pinned: stands in every plan until the teacher takes it out. */
  readonly pinned: boolean;
  readonly note: string | null;
  /** The tempo that it is set for, in quarter notes a minute; none where the lesson's own goal holds. */
  readonly toBpm?: number | null;
  /** The day for which it is set, ISO 8601 without a time. */
  readonly by?: string | null;
  /** Which of all that was set it is, from 0, where other lessons come between. */
  readonly place?: number;
}

/** A whole pack. */
export interface Pack {
  readonly format: typeof PACK_FORMAT;
  /** Lasting name of the lesson: what a student has practised is kept under it. */
  readonly id: string;
  /** Changes with any file of the pack, and only then. */
  readonly version: string;
  readonly lesson: Lesson;
  readonly exercises: readonly PackExercise[];
  /** The groove alone. */
  readonly groove: readonly PackBar[];
  readonly downloads: readonly PackDownload[];
  /** Exercises as the teacher plays them, at most one of each; left out where there are none. */
  readonly demonstrations?: readonly PackDemonstration[];
  /** Pictures, sound and video that the lesson shows; left out where there are none. */
  readonly media?: readonly PackMedium[];
  /** What the teacher set for one student; left out where the pack is for everybody. */
  readonly assignments?: readonly PackAssignment[];
  /** The level at which the teacher judges that student, as `packages/judge` names it; left out where the pack is for everybody. */
  readonly level?: string;
  /** Which way round that student's drums stand; left out where the teacher has not said. */
  readonly setUp?: SetUp;
  /** Whether it is opened by a private link: beside its folder lies what was set, and what is played goes back there. */
  readonly isPrivate?: true;
}

/** How many exercises a phone shows at once on its first screen. */
export const EXERCISES_IN_SIGHT = 6;
