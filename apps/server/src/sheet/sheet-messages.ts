/** What the server and its engraving thread say to each other. */
import type { Assignment, LogRowText } from '@shedbook/coach';
import type { Book, Paper, SetUp, StandardFormat } from '@shedbook/core';
import type { Recorded } from '@shedbook/film';
import type { PackAssignment } from '@shedbook/pack';
import type { LanguageTag } from '@shedbook/words';
import type { KeptPlaying } from './kept-demonstrations.ts';

/** A performance that was heard, and where it lies. */
export interface HeardPlaying {
  readonly recorded: Recorded;
  readonly path: string;
}

/** Asks for a performance as a demonstration, to be kept. */
export interface DemonstrationOrder {
  readonly want: 'demonstration';
  readonly text: string;
  readonly heard: HeardPlaying;
}

/** Asks for the pages of a lesson, as pictures or as a file, for a standard file, or for a take-home pack in one file. */
export interface SheetOrder {
  readonly text: string;
  readonly want: 'pages' | 'pdf' | 'standard' | 'pack';
  /** The language that is printed. */
  readonly language: LanguageTag;
  /** Folder that the paths of files in the lesson begin in: that of the store; null for none. */
  readonly dataDir: string | null;
  /** Of a standard file. */
  readonly format: StandardFormat;
  /** Lasting name of the lesson, for a pack. */
  readonly name: string;
  /** What the teacher set of it for the student whom a pack is for. */
  readonly assignments: readonly PackAssignment[];
  /** The level at which that student is judged; null where the pack is for everybody. */
  readonly level: string | null;
  /** Which way round that student's drums stand; null where nobody has said. */
  readonly setUp: SetUp | null;
  /** Performances that a pack demonstrates exercises with, and where they lie. */
  readonly demonstrations: readonly HeardPlaying[];
  /** Those that are kept with the lesson; what was sent for the pack goes before them. */
  readonly kept: readonly KeptPlaying[];
  /** Films that a pack carries, and where they lie. */
  readonly films: readonly { readonly exercise: number; readonly path: string }[];
  /** Whether a pack is opened by a private link: one without recordings. */
  readonly isPrivate: boolean;
}

/** Asks for a book as a file, or for the packs of its lessons in one. */
export interface BookOrder {
  readonly want: 'book' | 'book-pack';
  /** Its chapters name lessons by their ids. */
  readonly book: Book;
  /** The lessons, each once, and the demonstrations that are kept with each: a pack shows them. */
  readonly lessons: readonly {
    readonly id: string;
    readonly text: string;
    readonly kept: readonly KeptPlaying[];
  }[];
  readonly language: LanguageTag;
  /** Folder that the paths of files in the lessons begin in. */
  readonly dataDir: string;
}

/** Any order. */
export type Order = BookOrder | DemonstrationOrder | ProgressOrder | SheetOrder;

/** Asks for the progress page of a student as a file. */
export interface ProgressOrder {
  readonly want: 'progress';
  readonly name: string;
  readonly assignments: readonly Assignment[];
  /** Which way round the student's drums stand; null: as each lesson says. */
  readonly setUp: SetUp | null;
  /** Texts of the lessons that the student practises from, by their ids. */
  readonly lessons: readonly { readonly id: string; readonly text: string }[];
  /** Rows of practice. */
  readonly rows: readonly LogRowText[];
  /** A moment, by the clock of whoever asks. */
  readonly now: string;
  /** How many weeks it looks back. */
  readonly weeks: number;
  readonly language: LanguageTag;
  readonly paper: Paper;
}

/** An answer to an order; `errors` where the text is no lesson, `unfinished` with the ids of a book's lessons that are none. */
export type SheetAnswer =
  | { readonly kind: 'pages'; readonly pages: readonly string[] }
  | { readonly kind: 'file'; readonly title: string; readonly bytes: Uint8Array }
  | { readonly kind: 'demonstration'; readonly made: KeptPlaying }
  | { readonly kind: 'errors' }
  | { readonly kind: 'unfinished'; readonly lessons: readonly string[] }
  | { readonly kind: 'broken'; readonly message: string };
