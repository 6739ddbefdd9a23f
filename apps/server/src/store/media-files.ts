/**
 * The teacher's own pictures, sound and video, in a folder beside the store.
 *
 * Conventions: a file is named by its content, and a lesson names it by its path from the folder of the store
 * (`media/3f2a9c0d1e5b7a883f2a9c0d.png`), so that no table has to say which file is whose: a file belongs to the lessons
 * in whose texts, earlier ones among them, its name stands.
 */
import { join } from 'node:path';
import { MEDIUM_NAME, type MediumFile } from '@shedbook/pack/media';
import type { Kysely } from 'kysely';
import type { Tables } from './tables.ts';
import { keepOnlyNamed, namesIn, readIfThere, wipe, writeWhole } from './whole-files.ts';

/** Name of the folder, and the beginning of every path in a lesson. */
export const MEDIA_FOLDER = 'media';

/** The files. */
export interface MediaStore {
  /** Keeps a file. @returns its path for a lesson */
  keep(file: MediumFile): Promise<string>;
  /** What is in the file with a name; null where it is not there. */
  read(name: string): Promise<Uint8Array | null>;
  /** Erases those files, of which a lesson that was just erased may have been the only one, that no lesson names. */
  eraseUnnamed(names: readonly string[]): Promise<void>;
  /** Names of the files that a lesson names, in all its texts. */
  namedBy(lesson: string): Promise<readonly string[]>;
  /** Erases what no lesson names and nobody is about to name. */
  sweep(): Promise<void>;
}

const NAMES = /\bmedia\/([0-9a-f]{24}\.[a-z0-9]{3,4})\b/g;

/** Names of files in a text. */
export function namesInText(text: string): readonly string[] {
  return [...text.matchAll(NAMES)].flatMap(([, name = '']) => (MEDIUM_NAME.test(name) ? [name] : []));
}

/** The files of a folder of the store, which is made with the first of them. */
export function openMedia(database: Kysely<Tables>, dataDir: string): MediaStore {
  const folder = join(dataDir, MEDIA_FOLDER);
  const texts = () => database.selectFrom('steps').select('text').where('text', 'like', `%${MEDIA_FOLDER}/%`);
  return {
    keep: async ({ name, content }) => {
      if (!(await namesIn(folder)).includes(name)) await writeWhole(folder, name, content);
      return `${MEDIA_FOLDER}/${name}`;
    },
    read: async (name) => (MEDIUM_NAME.test(name) ? readIfThere(join(folder, name)) : null),
    namedBy: async (lesson) => {
      const rows = await texts().where('lesson_id', '=', lesson).execute();
      return [...new Set(rows.flatMap(({ text }) => namesInText(text)))];
    },
    eraseUnnamed: async (names) => {
      for (const name of names) {
        const named = await texts().where('text', 'like', `%${name}%`).limit(1).executeTakeFirst();
        if (!named) await wipe(join(folder, name));
      }
    },
    sweep: async () => {
      if ((await namesIn(folder)).length === 0) return;
      const rows = await texts().execute();
      await keepOnlyNamed(folder, new Set(rows.flatMap(({ text }) => namesInText(text))));
    },
  };
}
