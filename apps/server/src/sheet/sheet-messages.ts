/** What the server and its engraving thread say to each other. */

import type { PackAssignment } from '@shedbook/pack';
import type { LanguageTag } from '@shedbook/words';

/** Asks for the pages of a lesson, as pictures or as a file, or for a take-home pack in one file. */
export interface SheetOrder {
  readonly id: number;
  readonly text: string;
  readonly want: 'pages' | 'pdf' | 'pack';
  /** The language that is printed. */
  readonly language: LanguageTag;
  /** Lasting name of the lesson, for a pack. */
  readonly name: string;
  /** What the teacher set of it for the student whom a pack is for. */
  readonly assignments: readonly PackAssignment[];
}

/** An answer to the order with the same id. */
export type SheetAnswer =
  | { readonly id: number; readonly kind: 'pages'; readonly pages: readonly string[] }
  | { readonly id: number; readonly kind: 'pdf'; readonly bytes: Uint8Array }
  | { readonly id: number; readonly kind: 'pack'; readonly bytes: Uint8Array }
  | { readonly id: number; readonly kind: 'errors' }
  | { readonly id: number; readonly kind: 'broken'; readonly message: string };
