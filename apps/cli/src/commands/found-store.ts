/** What the desk's server tells of a store that it looked at. */

/** What is found in a folder of lessons. */
export interface FoundStore {
  readonly folder: string;
  readonly exists: boolean;
  /** Version number of the store, or null where it cannot be opened. */
  readonly version: number | null;
  /** Version number that this program writes. */
  readonly known: number;
  /** What is wrong with the file, in the database's own words. */
  readonly faults: readonly string[];
  /** Number of lessons that can be read. */
  readonly lessons: number;
  /** Ids of lessons that cannot. */
  readonly damagedLessons: readonly string[];
  /** Number of students that can be read. */
  readonly students: number;
  /** Number of entries of practice that are not as they were written. */
  readonly damagedRows: number;
  readonly storeBytes: number;
  readonly freeBytes: number;
  /** Copies that lie beside the store. */
  readonly copies: readonly string[];
  readonly isSound: boolean;
}

/** What was saved of one. */
export interface SavedStore {
  /** Number of lessons that were saved. */
  readonly lessons: number;
  /** Number of lessons of which an earlier text was saved. */
  readonly earlier: number;
  /** Number of students that were saved. */
  readonly students: number;
}
