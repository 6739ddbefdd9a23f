/**
 * Backing up: the store as it is at one moment and the recordings of takes, in one file, while the desk goes on working.
 *
 * Conventions: whichever database the store lies in, a backup holds it as a file of SQLite, and goes into either.
 */
import { createReadStream, mkdtempSync, rmSync, statSync } from 'node:fs';
import { open, rename, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import type { BackupFacts, WrittenBackup } from '@shedbook/host';
import { InputError, reasonOf } from '@shedbook/host';
import type SQLite from 'libsql';
import { checksumOf } from '../store/checksum.ts';
import type { BackupSource, Row } from '../store/copied.ts';
import { MEDIA_FOLDER, namesInText } from '../store/media-files.ts';
import { STORE_FILE, STORE_VERSION } from '../store/open.ts';
import { openTakesOf, STORE_NAME_NOTE } from '../store/open-takes.ts';
import type { StorePlace } from '../store/place.ts';
import { type TakeFile, type TakeFiles, type TakeName, takeFileName } from '../store/take-files.ts';
import { readIfThere } from '../store/whole-files.ts';
import { ABOUT_FILE, ARCHIVE_VERSION, MEDIA_PART, TAKES_PART, writeArchive } from './archive.ts';
import { checkBackup } from './read-backup.ts';
import { openSource } from './source.ts';
import { TAR_END } from './tar.ts';

/** Beginning of the name of a folder that a backup is made in. */
export const BACKING_UP = 'backing-up-';

const THE_TAKE = 'from takes where student_id = ? and take_id = ?';

/** What lets somebody in here and nowhere else. */
export const ADMISSIONS = ['sessions', 'invitations', 'passkeys', 'challenges'] as const;

/** The store at one moment, in a folder of its own; nobody is signed in there, or invited. */
async function takeSnapshot(source: BackupSource, folder: string): Promise<SQLite.Database> {
  const snapshot = await source.copyInto(join(folder, STORE_FILE));
  snapshot.pragma('journal_mode = DELETE');
  snapshot.pragma('secure_delete = ON');
  for (const table of ADMISSIONS) snapshot.exec(`delete from ${table}`);
  // what a store is called is its own: two of one name would take each other's recordings for lost
  snapshot.prepare('delete from notes where key = ?').run(STORE_NAME_NOTE);
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
async function takeAsItIsNow(
  source: BackupSource,
  snapshot: SQLite.Database,
  name: TakeName,
): Promise<Row | null> {
  const now = await source.takeNow(name);
  snapshot.prepare(`delete ${THE_TAKE}`).run(name.student, name.take);
  if (!now) return null;
  const columns = Object.keys(now);
  const places = columns.map(() => '?').join(', ');
  snapshot.prepare(`insert into takes (${columns.join(', ')}) values (${places})`).run(...Object.values(now));
  return now;
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

async function* archiveOf(
  source: BackupSource,
  place: StorePlace,
  folder: string,
): AsyncGenerator<Uint8Array, BackupFacts> {
  const madeAt = new Date();
  const files = await openTakesOf(place);
  const snapshot = await takeSnapshot(source, folder);
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
        const now = await takeAsItIsNow(source, snapshot, file);
        if (!now) continue;
        file = fileOf(now);
        content = await soundRecording(files, file);
      }
      counted[content ? 'takes' : 'damagedTakes'] += 1;
      if (content) yield* archive.file(`${TAKES_PART}/${takeFileName(file)}`, content);
    }
    for (const name of namedIn(snapshot)) {
      const content = await readIfThere(join(place.dataDir, MEDIA_FOLDER, name));
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
 * The bytes of a backup of a store, one after the other; it may be in use.
 * @throws InputError where it cannot be opened
 */
export async function* backupBytes(place: StorePlace): AsyncGenerator<Uint8Array, BackupFacts> {
  const source = await openSource(place);
  try {
    const folder = mkdtempSync(join(place.dataDir, BACKING_UP));
    try {
      return yield* archiveOf(source, place, folder);
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  } finally {
    await source.close();
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
 * Writes a backup of a store into a file and reads it again to see that it is whole; a file that had this name before
 * is replaced only then.
 * @throws InputError where the store cannot be opened, or the file not be written
 */
export async function writeBackup(place: StorePlace, file: string): Promise<WrittenBackup> {
  const unfinished = `${file}.part`;
  try {
    const facts = await writeAll(unfinished, backupBytes(place));
    await checkBackup(unfinished);
    await rename(unfinished, file);
    return { ...facts, file, bytes: (await stat(file)).size };
  } catch (error) {
    await rm(unfinished, { force: true });
    if (error instanceof InputError || (error as NodeJS.ErrnoException).code === undefined) throw error;
    throw new InputError((said) => said.words.unwritable({ file, why: reasonOf(error, said) }));
  }
}
