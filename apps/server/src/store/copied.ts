/** What a backup asks of a store, in whichever database it lies. */
import type { Database } from 'libsql';
import type { TakeName } from './take-files.ts';

/** A row of a table by its columns. */
export type Row = Readonly<Record<string, string | number | null>>;

/** A store that is backed up while others use it. */
export interface BackupSource {
  /** Writes the store as it is at this moment into a file of SQLite. @returns it, open; without a log beside it */
  copyInto(file: string): Promise<Database>;
  /** The row of a take as it is now; null where there is none any more. */
  takeNow(name: TakeName): Promise<Row | null>;
  close(): Promise<void>;
}
