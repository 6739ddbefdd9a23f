/**
 * Files from elsewhere that are read whole: MIDI files, practice logs, SoundFonts. Each is read in a thread with limits of
 * size, time and memory, so that no file stops the program; recordings, which are longer than memory, have
 * `decodeSound`.
 */
import type { CliWords } from '@shedbook/words';
import { InputError, reasonOf } from '../input-error.ts';
import { createThread, type OrderTerms, TooMuchError } from '../thread/thread.ts';
import { threadFile } from '../thread/thread-file.ts';
import type { ProcessLimits } from '../thread/watch-process.ts';
import type { Outside, OutsideAnswer, OutsideKind, OutsideOrder } from './outside-messages.ts';
import { TooLargeError } from './read-up-to.ts';

/** What reading a kind of file may take. */
interface OutsideLimits extends ProcessLimits {
  readonly mostBytes: number;
}

const MEGABYTE = 1_000_000;

/**
 * By kind: an evening on an electronic kit is a MIDI file of a hundred kilobytes, a year of daily practice a log of five
 * megabytes, and SoundFonts of many hundred megabytes are given away; a SoundFont lies in memory twice while it is read.
 */
const LIMITS: Readonly<Record<OutsideKind, OutsideLimits>> = {
  midi: { mostBytes: 8 * MEGABYTE, processorMs: 5000, grownBytes: 400 * MEGABYTE },
  log: { mostBytes: 64 * MEGABYTE, processorMs: 20_000, grownBytes: 1000 * MEGABYTE },
  soundFont: { mostBytes: 1024 * MEGABYTE, processorMs: 30_000, grownBytes: 3000 * MEGABYTE },
};

/** Milliseconds that a disk, or whoever writes into a pipe, may take for it. */
const DEADLINE_MS = 120_000;

/** Bytes for the objects of the thread. */
const MEMORY_BYTES = 1000 * MEGABYTE;

/** A file, how it is called to whoever named it, and what should have been there. */
export interface OutsideFile {
  readonly path: string;
  /** What it is called in a sentence: its path, or an option with it. */
  readonly called?: string;
  readonly expected: (words: CliWords['expected']) => string;
  /** Aborted when nobody waits any more. */
  readonly signal?: AbortSignal;
  readonly limits?: Partial<OutsideLimits>;
}

/** The error for a file that cannot be read: what is wrong with it, and what would be right. */
export function unreadableFile(
  { path, called = path, expected }: Pick<OutsideFile, 'path' | 'called' | 'expected'>,
  error: unknown,
): InputError {
  return new InputError((to) =>
    to.words.unreadable({ file: called, why: reasonOf(error, to), expected: expected(to.words.expected) }),
  );
}

/** @throws InputError where the file is at fault; Error where we are */
function foundIn(file: OutsideFile, mostBytes: number, said: OutsideAnswer): Outside[OutsideKind]['found'] {
  switch (said.kind) {
    case 'read':
      return said.found;
    case 'too-large':
      throw unreadableFile(file, new TooLargeError(mostBytes));
    case 'unreadable':
      throw unreadableFile(file, said);
    case 'broken':
      throw new Error(said.message);
  }
}

/**
 * Reads a file of a kind.
 * @throws InputError where it cannot be read, is too large, or takes more time or memory than any such file does
 */
export async function readOutside<Kind extends OutsideKind>(
  kind: Kind,
  file: OutsideFile,
  asked: Outside[Kind]['asked'],
): Promise<Outside[Kind]['found']> {
  const { mostBytes, ...process } = { ...LIMITS[kind], ...file.limits };
  const thread = createThread<OutsideOrder, OutsideAnswer>(threadFile(import.meta.url, 'outside-worker'), {
    memoryBytes: MEMORY_BYTES,
  });
  const order = { kind, path: file.path, mostBytes, asked } as OutsideOrder;
  const left = file.signal === undefined ? {} : { signal: file.signal, endsWhenLeft: true };
  const terms: OrderTerms = { of: file.path, deadlineMs: DEADLINE_MS, process, ...left };
  try {
    return foundIn(file, mostBytes, await thread.ask(order, terms)) as Outside[Kind]['found'];
  } catch (error) {
    throw error instanceof TooMuchError
      ? new InputError(({ words }) => words.tooMuch({ file: file.called ?? file.path }))
      : error;
  } finally {
    await thread.close();
  }
}
