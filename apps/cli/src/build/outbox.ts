/** Files made by a build: written as they are made, listed for the summary. */
import { writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { InputError, makeFolder, reasonOf } from '@shedbook/host';
import type { FileKind, PackFile } from '@shedbook/pack';

/** A file that was made. */
export interface MadeFile {
  /** Path as a person would give it. */
  readonly path: string;
  readonly kind: FileKind | 'pack';
  /** The exercise it is of, or null for the whole sheet. */
  readonly exercise: number | null;
  readonly bytes: number;
}

/** Takes files for one folder. */
export interface Outbox {
  readonly folder: string;
  readonly made: readonly MadeFile[];
  put(file: PackFile & Pick<MadeFile, 'kind' | 'exercise'>): Promise<void>;
}

/**
 * An outbox for a folder, which is made with the first file.
 * @throws InputError when a file cannot be written.
 */
export function createOutbox(folder: string): Outbox {
  const made: MadeFile[] = [];
  return {
    folder,
    made,
    put: async ({ path: name, kind, exercise, content }) => {
      const path = join(folder, name);
      try {
        makeFolder(dirname(path));
        await writeFile(path, content);
      } catch (error) {
        throw new InputError((to) =>
          to.words.unwritable({ file: `--out: ${path}`, why: reasonOf(error, to) }),
        );
      }
      made.push({ path, kind, exercise, bytes: content.length });
    },
  };
}
