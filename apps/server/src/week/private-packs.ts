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
import type { DemonstrationStore } from '../store/demonstrations.ts';

/** The files of one pack by their paths within it. */
export type PackFiles = ReadonlyMap<string, Uint8Array>;

/** Makes packs and keeps the last ones. */
export interface PrivatePacks {
  /** Null where the lesson has errors. @throws TooMuchError where it takes too much */
  files(lesson: Pick<StoredLesson, 'id' | 'text'>, language: LanguageTag): Promise<PackFiles | null>;
}

/** Bytes that are kept at once: packs of some two megabytes each, more where a teacher plays in them. */
const MOST_BYTES = 160 * 2 ** 20;

/** What packs are made of. */
export interface PackParts {
  readonly packs: SheetMaker;
  readonly demonstrations: DemonstrationStore;
  /** Folder of the store, for the files that lessons show. */
  readonly dataDir: string;
}

interface KeptPack {
  readonly files: Promise<PackFiles | null>;
  /** 0 until it is made. */
  bytes: number;
}

/** Makes packs. */
export function keepPrivatePacks({ packs, demonstrations, dataDir }: PackParts): PrivatePacks {
  const all = new Map<string, KeptPack>();
  const make = async (id: string, text: string, language: LanguageTag): Promise<PackFiles | null> => {
    const kept = await demonstrations.whole(id);
    const made = await packs.pack({ text, name: id, language, dataDir, kept, isPrivate: true }, { of: id });
    if (!made) return null;
    const files = Object.entries(unzipSync(made.bytes));
    return new Map(files.map(([path, content]) => [path.slice(PACK_FOLDER.length + 1), content]));
  };
  /** Forgets what was asked for the longest ago, until there is room. */
  const makeRoom = () => {
    let bytes = [...all.values()].reduce((sum, each) => sum + each.bytes, 0);
    for (const [key, each] of all) {
      if (bytes <= MOST_BYTES || all.size === 1) return;
      all.delete(key);
      bytes -= each.bytes;
    }
  };
  const begin = (key: string, files: Promise<PackFiles | null>): KeptPack => {
    const pack: KeptPack = { files, bytes: 0 };
    files.then(
      (made) => {
        for (const content of made?.values() ?? []) pack.bytes += content.length;
        makeRoom();
      },
      () => all.get(key) === pack && all.delete(key),
    );
    return pack;
  };
  return {
    files: async ({ id, text }, language) => {
      const shown = (await demonstrations.of(id)).map((each) => each.id);
      const key = JSON.stringify([id, language, text, shown]);
      const pack = all.get(key) ?? begin(key, make(id, text, language));
      all.delete(key);
      all.set(key, pack);
      return pack.files;
    },
  };
}
