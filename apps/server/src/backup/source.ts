/**
 * What a backup is made of, in whichever database the store lies.
 *
 * Source: SQLite documentation, VACUUM INTO: a copy of one moment, whole or not at all, while others write.
 */
import { join } from 'node:path';
import SQLite from 'libsql';
import type { BackupSource, Row } from '../store/copied.ts';
import { makeStore, STORE_FILE } from '../store/open.ts';
import type { StorePlace } from '../store/place.ts';

function fileSource(dataDir: string): BackupSource {
  const file = join(dataDir, STORE_FILE);
  const inside = <Result>(work: (live: SQLite.Database) => Result, options?: SQLite.Options): Result => {
    const live = new SQLite(file, options);
    try {
      return work(live);
    } finally {
      live.close();
    }
  };
  return {
    copyInto: async (copy) => {
      inside((live) => live.prepare('vacuum into ?').run(copy));
      return new SQLite(copy);
    },
    takeNow: async ({ student, take }) =>
      inside(
        (live) => {
          const found = live.prepare('select * from takes where student_id = ? and take_id = ?');
          return (found.all(student, take) as readonly Row[])[0] ?? null;
        },
        { readonly: true },
      ),
    close: async () => undefined,
  };
}

/** Opens a store to back it up, as the desk would: one of an older program is brought up to date first. */
export async function openSource({ dataDir, address }: StorePlace): Promise<BackupSource> {
  if (address !== null) return (await import('../store/postgres/copy.ts')).postgresSource(address);
  makeStore(dataDir);
  return fileSource(dataDir);
}
