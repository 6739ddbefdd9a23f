/** Reading a backup: every file of it is compared with its sum before any is used. */
import { createHash } from 'node:crypto';
import { createReadStream, createWriteStream } from 'node:fs';
import { join } from 'node:path';
import { Writable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { InputError, reasonOf } from '@shedbook/host';
import { MEDIUM_NAME } from '@shedbook/pack/media';
import { isFull } from '../store/damaged.ts';
import { STORE_FILE } from '../store/open.ts';
import { ABOUT_FILE, ARCHIVE_VERSION, MEDIA_PART, SUMS_FILE, TAKES_PART } from './archive.ts';
import { readTar, TarError } from './tar.ts';

/** A file that may be in a backup; nothing else is written to the disk. */
const MAY_BE = new RegExp(`^(?:${ABOUT_FILE}|${SUMS_FILE}|${STORE_FILE}|${TAKES_PART}/[0-9a-f]{64}\\.zip)$`);

/** Whether a name is one of a file that may be in a backup. */
function mayBe(name: string): boolean {
  const [part, inside = '', ...more] = name.split('/');
  return MAY_BE.test(name) || (part === MEDIA_PART && more.length === 0 && MEDIUM_NAME.test(inside));
}

/** Bytes that a backup says of itself at most, and of the sum of a file. */
const ABOUT_BYTES = 10_000;

/** Where each file goes; nowhere where it is only looked at. */
type Whereto = (name: string) => Writable;

const nowhere: Whereto = () => new Writable({ write: (_part, _encoding, done) => done() });

async function smallText(content: AsyncIterable<Uint8Array>): Promise<string> {
  const parts: Uint8Array[] = [];
  for await (const part of content) parts.push(part);
  return Buffer.concat(parts).toString('utf8');
}

/** When a backup says that it was made. @throws TarError where it is none, RangeError where a newer program wrote it */
function readMadeAt(text: string): string {
  let about: Readonly<Record<string, unknown>> = {};
  try {
    about = JSON.parse(text) as typeof about;
  } catch {
    throw new TarError('no backup');
  }
  const { shedbookBackup, madeAt } = about;
  if (typeof shedbookBackup !== 'number') throw new TarError('no backup');
  if (shedbookBackup > ARCHIVE_VERSION) throw new RangeError(`version ${shedbookBackup}`);
  return `${madeAt}`;
}

/** The names and sums of a list. */
function sumsIn(text: string): ReadonlyMap<string, string> {
  const lines = text.split('\n').filter((line) => line !== '');
  return new Map(lines.map((line) => [line.slice(66), line.slice(0, 64)]));
}

function isSame(listed: ReadonlyMap<string, string>, found: ReadonlyMap<string, string>): boolean {
  return listed.size === found.size && [...found].every(([name, sum]) => listed.get(name) === sum);
}

async function readAll(file: string, whereto: Whereto): Promise<string> {
  let madeAt = '';
  const found = new Map<string, string>();
  let listed: ReadonlyMap<string, string> | null = null;
  await readTar(createReadStream(file), async ({ name, bytes }, content) => {
    const isFirst = found.size === 0;
    if (!mayBe(name) || listed || found.has(name) || isFirst !== (name === ABOUT_FILE))
      throw new TarError(`no place for ${name}`);
    if (name === SUMS_FILE) {
      listed = sumsIn(await smallText(content));
      return;
    }
    const sum = createHash('sha256');
    async function* summed() {
      for await (const part of content) {
        sum.update(part);
        yield part;
      }
    }
    if (name !== ABOUT_FILE) await pipeline(summed, whereto(name));
    else if (bytes > ABOUT_BYTES) throw new TarError('no backup');
    else madeAt = readMadeAt(await smallText(summed()));
    found.set(name, sum.digest('hex'));
  });
  if (!listed || !found.has(STORE_FILE) || !isSame(listed, found)) throw new TarError('other sums');
  return madeAt;
}

/** Says what is wrong with a backup. */
function faultOf(error: unknown, file: string): unknown {
  if (error instanceof TarError) return new InputError(({ words }) => words.backup.damaged({ file }));
  if (error instanceof RangeError) return new InputError(({ words }) => words.backup.newer({ file }));
  // A full disk is none of the backup's faults.
  if ((error as NodeJS.ErrnoException).code === undefined || isFull(error)) return error;
  return new InputError((said) =>
    said.words.unreadable({ file, why: reasonOf(error, said), expected: said.words.expected.backup }),
  );
}

/** Reads a backup to its end. @returns when it was made @throws InputError where it is none, damaged, or of a newer program */
export async function checkBackup(file: string, whereto: Whereto = nowhere): Promise<string> {
  try {
    return await readAll(file, whereto);
  } catch (error) {
    throw faultOf(error, file);
  }
}

/** Lays the files of a backup into a folder, which has to have one for takes and one for media. @returns when it was made @throws InputError as {@link checkBackup} */
export function unpackBackup(file: string, folder: string): Promise<string> {
  return checkBackup(file, (name) => createWriteStream(join(folder, name), { mode: 0o600, flush: true }));
}
