/**
 * Backing up: the store as it is at one moment and the recordings of takes, in one file, while the desk goes on working.
 *
 * Source: SQLite documentation, VACUUM INTO: a copy of one moment, whole or not at all, while others write.
 */
import { createReadStream, mkdtempSync, rmSync, statSync } from 'node:fs';
import { open, rename, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import type { BackupFacts, WrittenBackup } from '@shedbook/host';
import { InputError, reasonOf } from '@shedbook/host';
import SQLite from 'libsql';
import { checksumOf } from '../store/checksum.ts';
import { MEDIA_FOLDER, namesInText } from '../store/media-files.ts';
import { openDatabase, STORE_FILE, STORE_VERSION } from '../store/open.ts';
import { openTakeFiles, type TakeFile, type TakeFiles, takeFileName } from '../store/take-files.ts';
import { readIfThere } from '../store/whole-files.ts';
import { ABOUT_FILE, ARCHIVE_VERSION, MEDIA_PART, TAKES_PART, writeArchive } from './archive.ts';
import { checkBackup } from './read-backup.ts';
import { TAR_END } from './tar.ts';

/** Beginning of the name of a folder that a backup is made in. */
export const BACKING_UP = 'backing-up-';

type Row = Readonly<Record<string, string | number | null>>;

const THE_TAKE = 'from takes where student_id = ? and take_id = ?';

/** The store at one moment, in a folder of its own; nobody is signed in there. */
function takeSnapshot(dataDir: string, folder: string): SQLite.Database {
  const file = join(folder, STORE_FILE);
  const live = new SQLite(join(dataDir, STORE_FILE));
  try {
    live.prepare('vacuum into ?').run(file);
  } finally {
    live.close();
  }
  const snapshot = new SQLite(file);
  snapshot.pragma('journal_mode = DELETE');
  snapshot.pragma('secure_delete = ON');
  snapshot.exec('delete from sessions');
  return snapshot;
}

/** The recording of a row, where it is there as it was sent. */
async function soundRecording(files: TakeFiles, file: TakeFile): Promise<Uint8Array | null> {
  const content = await files.read(file);
  return content && checksumOf(content) === file.checksum ? content : null;
}

function fileOf(row: Row): TakeFile {
  return {
    student: `${row['student_id']}`,
    take: `${row['take_id']}`,
    checksum: `${row['checksum']}`,
  };
}

/** Writes into the snapshot what became of a take since: taken back, or recorded anew. @returns the row as it is now */
function takeAsItIsNow(dataDir: string, snapshot: SQLite.Database, { student, take }: TakeFile): Row | null {
  const live = new SQLite(join(dataDir, STORE_FILE), { readonly: true });
  try {
    const [now] = live.prepare(`select * ${THE_TAKE}`).all(student, take) as readonly Row[];
    snapshot.prepare(`delete ${THE_TAKE}`).run(student, take);
    if (!now) return null;
    const columns = Object.keys(now);
    const places = columns.map(() => '?').join(', ');
    snapshot
      .prepare(`insert into takes (${columns.join(', ')}) values (${places})`)
      .run(...Object.values(now));
    return now;
  } finally {
    live.close();
  }
}

function count(snapshot: SQLite.Database, table: 'lessons' | 'students'): number {
  return (snapshot.prepare(`select count(*) as n from ${table}`).get() as { readonly n: number }).n;
}

/** Names of the teacher's own files that lessons show or have shown. */
function namedIn(snapshot: SQLite.Database): readonly string[] {
  const rows = snapshot
    .prepare("select text from steps where text like '%' || ? || '/%'")
    .all(MEDIA_FOLDER) as readonly { readonly text: string }[];
  return [...new Set(rows.flatMap(({ text }) => namesInText(text)))].toSorted();
}

async function* archiveOf(dataDir: string, folder: string): AsyncGenerator<Uint8Array, BackupFacts> {
  const madeAt = new Date();
  const files = openTakeFiles(dataDir);
  const snapshot = takeSnapshot(dataDir, folder);
  const archive = writeArchive(Math.floor(madeAt.getTime() / 1000));
  const counted = { takes: 0, damagedTakes: 0 };
  try {
    const about = { shedbookBackup: ARCHIVE_VERSION, storeVersion: STORE_VERSION, madeAt };
    yield* archive.file(ABOUT_FILE, Buffer.from(`${JSON.stringify(about)}\n`));
    for (const row of snapshot
      .prepare('select * from takes order by student_id, take_id')
      .all() as readonly Row[]) {
      let file = fileOf(row);
      let content = await soundRecording(files, file);
      if (!content) {
        const now = takeAsItIsNow(dataDir, snapshot, file);
        if (!now) continue;
        file = fileOf(now);
        content = await soundRecording(files, file);
      }
      counted[content ? 'takes' : 'damagedTakes'] += 1;
      if (content) yield* archive.file(`${TAKES_PART}/${takeFileName(file)}`, content);
    }
    for (const name of namedIn(snapshot)) {
      const content = await readIfThere(join(dataDir, MEDIA_FOLDER, name));
      if (content) yield* archive.file(`${MEDIA_PART}/${name}`, content);
    }
    const facts = {
      ...{ madeAt: madeAt.toISOString(), ...counted },
      lessons: count(snapshot, 'lessons'),
      students: count(snapshot, 'students'),
    };
    snapshot.close();
    const store = join(folder, STORE_FILE);
    yield* archive.long({ name: STORE_FILE, bytes: statSync(store).size }, createReadStream(store));
    yield* archive.sums();
    yield TAR_END;
    return facts;
  } finally {
    if (snapshot.open) snapshot.close();
  }
}

/**
 * The bytes of a backup of a folder, one after the other; the folder may be in use.
 * @throws InputError where its store cannot be opened
 */
export async function* backupBytes(dataDir: string): AsyncGenerator<Uint8Array, BackupFacts> {
  // as the desk would: a store of an older program is brought up to date first
  await openDatabase(dataDir).destroy();
  const folder = mkdtempSync(join(dataDir, BACKING_UP));
  try {
    return yield* archiveOf(dataDir, folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Writes everything that comes, and gives what is told at the end. */
async function writeAll(path: string, bytes: AsyncGenerator<Uint8Array, BackupFacts>): Promise<BackupFacts> {
  const handle = await open(path, 'w', 0o600);
  try {
    for (;;) {
      const { value, done } = await bytes.next();
      if (done) {
        await handle.sync();
        return value;
      }
      await handle.writeFile(value);
    }
  } finally {
    await handle.close();
  }
}

/**
 * Writes a backup of a folder into a file and reads it again to see that it is whole; a file that had this name before
 * is replaced only then.
 * @throws InputError where the store cannot be opened, or the file not be written
 */
export async function writeBackup(dataDir: string, file: string): Promise<WrittenBackup> {
  const unfinished = `${file}.part`;
  try {
    const facts = await writeAll(unfinished, backupBytes(dataDir));
    await checkBackup(unfinished);
    await rename(unfinished, file);
    return { ...facts, file, bytes: (await stat(file)).size };
  } catch (error) {
    await rm(unfinished, { force: true });
    if (error instanceof InputError || (error as NodeJS.ErrnoException).code === undefined) throw error;
    throw new InputError((said) => said.words.unwritable({ file, why: reasonOf(error, said) }));
  }
}
