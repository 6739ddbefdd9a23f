/**
 * The practice pages that private links open: one pack for each lesson, the same for every student, made anew when
 * the lesson has changed.
 *
 * Conventions: what is kept is a copy of what can be made again, so it goes with the program that made it.
 */
import { PACK_FOLDER } from '@shedbook/pack/serving';
import type { StoredLesson } from '@shedbook/routes';
import type { LanguageTag } from '@shedbook/words';
import { unzipSync } from 'fflate';
import type { SheetMaker } from '../sheet/sheet-maker.ts';

/** The files of one pack by their paths within it. */
export type PackFiles = ReadonlyMap<string, Uint8Array>;

/** Makes packs and keeps the last ones. */
export interface PrivatePacks {
  /** Null where the lesson has errors. @throws TooMuchError where it takes too much */
  files(lesson: Pick<StoredLesson, 'id' | 'text'>, language: LanguageTag): Promise<PackFiles | null>;
}

/** Packs that are kept at once: of some two megabytes each. */
const MOST_KEPT = 60;

/** Makes packs. @param dataDir folder of the store, for the files that lessons show */
export function keepPrivatePacks(packs: SheetMaker, dataDir: string): PrivatePacks {
  const kept = new Map<string, Promise<PackFiles | null>>();
  const make = async (id: string, text: string, language: LanguageTag): Promise<PackFiles | null> => {
    const made = await packs.pack({ text, name: id, language, dataDir, isPrivate: true }, { of: id });
    if (!made) return null;
    const files = Object.entries(unzipSync(made.bytes));
    return new Map(files.map(([path, content]) => [path.slice(PACK_FOLDER.length + 1), content]));
  };
  return {
    files: ({ id, text }, language) => {
      const key = JSON.stringify([id, language, text]);
      const made = kept.get(key) ?? make(id, text, language);
      kept.delete(key);
      kept.set(key, made);
      made.catch(() => kept.get(key) === made && kept.delete(key));
      const [eldest] = kept.keys();
      if (kept.size > MOST_KEPT && eldest !== undefined) kept.delete(eldest);
      return made;
    },
  };
}
