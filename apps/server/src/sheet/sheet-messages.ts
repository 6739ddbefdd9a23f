/** What the server and its engraving thread say to each other. */
import type { StandardFormat } from '@shedbook/core';
import type { PackAssignment } from '@shedbook/pack';
import type { LanguageTag } from '@shedbook/words';

/** Asks for the pages of a lesson, as pictures or as a file, for a standard file, or for a take-home pack in one file. */
export interface SheetOrder {
  readonly text: string;
  readonly want: 'pages' | 'pdf' | 'standard' | 'pack';
  /** The language that is printed. */
  readonly language: LanguageTag;
  /** Of a standard file. */
  readonly format: StandardFormat;
  /** Lasting name of the lesson, for a pack. */
  readonly name: string;
  /** What the teacher set of it for the student whom a pack is for. */
  readonly assignments: readonly PackAssignment[];
  /** Whether a pack is opened by a private link: one without recordings. */
  readonly isPrivate: boolean;
}

/** An answer to an order; `errors` where the text is no lesson. */
export type SheetAnswer =
  | { readonly kind: 'pages'; readonly pages: readonly string[] }
  | { readonly kind: 'file'; readonly title: string; readonly bytes: Uint8Array }
  | { readonly kind: 'errors' }
  | { readonly kind: 'broken'; readonly message: string };
