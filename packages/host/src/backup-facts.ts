/** What is told of a backup: the server makes and restores it, the command line says it. */

/** What a backup holds. */
export interface BackupFacts {
  /** ISO 8601, in UTC. */
  readonly madeAt: string;
  /** Number of lessons, those in the bin too. */
  readonly lessons: number;
  /** Number of students, those in the bin too. */
  readonly students: number;
  /** Number of takes whose recordings are in it. */
  readonly takes: number;
  /** Number of takes whose recordings were damaged or gone when it was made. */
  readonly damagedTakes: number;
}

/** A backup that was written, and read again to see that it is whole. */
export interface WrittenBackup extends BackupFacts {
  readonly file: string;
  readonly bytes: number;
}

/** What became of a folder whose backup was restored. */
export interface Restored extends BackupFacts {
  readonly folder: string;
  /** Backup of what was there before; null where nothing was. */
  readonly before: string | null;
  /** Number of things in the backup that were erased since and stay so. */
  readonly leftErased: number;
}
