/** Files made by a build: written as they are made, listed for the summary. */
import { mkdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { InputError } from '../input-error.ts';
import { reasonOf } from '../lesson-file.ts';

/** A file that was made. */
export interface MadeFile {
  /** Path as a person would give it. */
  readonly path: string;
  readonly kind: 'sheet' | 'page' | 'musicxml' | 'midi' | 'audio' | 'pack';
  /** The exercise it is of, or null for the whole sheet. */
  readonly exercise: number | null;
  readonly bytes: number;
}

/** Takes files for one folder. */
export interface Outbox {
  readonly folder: string;
  readonly made: readonly MadeFile[];
  put(
    name: string,
    kind: MadeFile['kind'],
    exercise: number | null,
    content: string | Uint8Array,
  ): Promise<void>;
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
    put: async (name, kind, exercise, content) => {
      const path = join(folder, name);
      try {
        await mkdir(dirname(path), { recursive: true });
        await writeFile(path, content);
      } catch (error) {
        throw new InputError(`--out: ${path} cannot be written: ${reasonOf(error)}`);
      }
      made.push({ path, kind, exercise, bytes: Buffer.byteLength(content) });
    },
  };
}

/** A number as file names have it: `03` of 24, `007` of 120. */
export function fileNumber(number: number, of: number): string {
  return String(number).padStart(Math.max(2, String(of).length), '0');
}
