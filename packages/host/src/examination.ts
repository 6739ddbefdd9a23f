/** What is told of a store that was looked at: the server looks, the command line says it. */

/** What was found in a folder of lessons. */
export interface Examination {
  readonly folder: string;
  /** Where the database is that lessons are kept in, without its secret; null for a file in the folder. */
  readonly address: string | null;
  /** Null where there is no store, or it cannot be opened at all. */
  readonly version: number | null;
  /** Version number that this program writes. */
  readonly known: number;
  readonly exists: boolean;
  /** What SQLite finds wrong, in its own words; empty where all is well. */
  readonly faults: readonly string[];
  /** Number of lessons that can be read. */
  readonly lessons: number;
  /** Lessons that cannot, by what they were called when they could; null where that is damaged, too. */
  readonly damagedLessons: readonly { readonly id: string; readonly title: string | null }[];
  /** Number of students that can be read. */
  readonly students: number;
  /** Number of rows of practice that are not as they were written. */
  readonly damagedRows: number;
  /** Address of the bucket that recordings lie in, without a secret; null for a folder. */
  readonly takesIn: string | null;
  /** Number of takes whose recording is not there. */
  readonly lostTakes: number;
  readonly storeBytes: number;
  readonly freeBytes: number;
  /** Copies that lie beside the store. */
  readonly copies: readonly string[];
  /** Whether nothing is wrong. */
  readonly isSound: boolean;
}

/** What was saved as files. */
export interface Saved {
  /** Number of lessons that were saved. */
  readonly lessons: number;
  /** Number of lessons of which an earlier text was saved, since the last cannot be read. */
  readonly earlier: number;
  /** Number of students that were saved. */
  readonly students: number;
}
