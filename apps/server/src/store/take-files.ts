/** The files of takes, in a folder beside the store. */
import { createHash } from 'node:crypto';
import { rename } from 'node:fs/promises';
import { join } from 'node:path';
import { keepOnlyNamed, layFiles, namesIn, readIfThere, wipe, writeWhole } from './whole-files.ts';

/** Name of the folder. */
export const TAKES_FOLDER = 'takes';

/** Whose take it is, and what the student's page calls it. */
export interface TakeName {
  readonly student: string;
  readonly take: string;
}

/** A recording of a take. Another recording of the same take is another file, so that neither writes over the other. */
export interface TakeFile extends TakeName {
  /** Of what is in it. */
  readonly checksum: string;
}

/** The files. */
export interface TakeFiles {
  /** Writes one; it is on the disk when this is done. */
  write(file: TakeFile, content: Uint8Array): Promise<void>;
  /** Reads one; null where it is not there. */
  read(file: TakeFile): Promise<Uint8Array | null>;
  /** Deletes one, where it is there. */
  remove(file: TakeFile): Promise<void>;
  /** Deletes whatever is none of these and was not written just now, by another server perhaps. */
  keepOnly(files: readonly TakeFile[]): Promise<void>;
  /** Gives files the names that they have now; an older program named them without their checksums. */
  nameAnew(files: readonly TakeFile[]): Promise<void>;
  /** Names of those that are there. */
  names(): Promise<ReadonlySet<string>>;
  /** Takes in those of a folder, beside what is there. */
  lay(folder: string): Promise<void>;
  /**
   * Makes sure that files can be kept and erased, and that there are none of another store.
   * @param store what the store is called
   * @throws InputError where not
   */
  settle(store: string): Promise<void>;
}

const ENDING = '.zip';

function nameFrom(parts: readonly string[]): string {
  return createHash('sha256').update(JSON.stringify(parts)).digest('hex').concat(ENDING);
}

/** A name for the disk: ids come from outside. */
export function takeFileName({ student, take, checksum }: TakeFile): string {
  return nameFrom([student, take, checksum]);
}

/** The name that an older program gave. */
export function formerTakeName({ student, take }: TakeName): string {
  return nameFrom([student, take]);
}

/** The files in a folder of the store, which is made where it is not there. */
export function openTakeFiles(dataDir: string): TakeFiles {
  const folder = join(dataDir, TAKES_FOLDER);
  const pathOf = (file: TakeFile) => join(folder, takeFileName(file));
  return {
    write: (file, content) => writeWhole(folder, takeFileName(file), content),
    read: (file) => readIfThere(pathOf(file)),
    remove: (file) => wipe(pathOf(file)),
    nameAnew: async (files) => {
      const there = new Set(await namesIn(folder));
      for (const file of files) {
        const before = formerTakeName(file);
        if (there.has(before)) await rename(join(folder, before), pathOf(file));
      }
    },
    keepOnly: (files) => keepOnlyNamed(folder, new Set(files.map(takeFileName))),
    names: async () => new Set(await namesIn(folder)),
    lay: (from) => layFiles(from, folder),
    settle: async () => undefined,
  };
}
