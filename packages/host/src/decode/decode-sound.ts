/**
 * Sound files of any usual format as blocks of mono samples.
 *
 * Conventions: a stranger's file is decoded in a thread of its own with a limit of time and memory, a block ahead of
 * whoever listens; what is for FFmpeg is decoded by that program. Threads are kept for the next file.
 */
import { open } from 'node:fs/promises';
import { Hertz } from '@shedbook/core';
import { InputError, reasonOf } from '../input-error.ts';
import { createThread, type Thread, TooMuchError } from '../thread/thread.ts';
import { threadFile } from '../thread/thread-file.ts';
import type { ProcessLimits } from '../thread/watch-process.ts';
import type { DecodeAnswer, DecodeOrder } from './decode-messages.ts';
import { type DecodedSound, upToMost } from './decoded-sound.ts';
import { openWithFfmpeg } from './ffmpeg.ts';
import { unreadableSound } from './say-fault.ts';
import { breaksOff, cannotRead, SoundFault } from './sound-fault.ts';

const HEAD_BYTES = 65_536;

/** Limits for opening a recording and for each block of it, which take hundredths of a second. */
const LIMITS: ProcessLimits = { processorMs: 3000, grownBytes: 400 * 2 ** 20 };

/** Milliseconds that a disk may take for it. */
const DEADLINE_MS = 60_000;

/** Bytes for the objects of a thread. */
const MEMORY_BYTES = 256 * 2 ** 20;

type DecodeThread = Thread<DecodeOrder, DecodeAnswer>;

const idle: DecodeThread[] = [];

/** A thread for one recording. */
interface Decoder {
  /** @throws SoundFault where the file is at fault: by what the thread says, by what it takes, or by ending it */
  ask(order: DecodeOrder): Promise<DecodeAnswer>;
  /** Leaves the thread to the next recording. */
  leave(): void;
}

function takeDecoder(process: ProcessLimits): Decoder {
  const file = threadFile(import.meta.url, 'decode-worker');
  const thread: DecodeThread = idle.pop() ?? createThread(file, { memoryBytes: MEMORY_BYTES });
  const terms = { of: 'a recording', deadlineMs: DEADLINE_MS, process };
  return {
    ask: async (order) => {
      const said = await thread.ask(order, terms).catch((error: unknown) => {
        const isTooMuch = error instanceof TooMuchError;
        throw isTooMuch ? new SoundFault({ fault: 'too-much' }) : breaksOff({ is: 'packet' });
      });
      if (said.kind === 'fault') throw new SoundFault(said.fact);
      if (said.kind === 'broken') throw new Error(said.message);
      return said;
    },
    leave: () => void idle.push(thread),
  };
}

/** Blocks of an opened recording: the next one is decoded while one is listened to. */
async function* blocksOf(decoder: Decoder): AsyncGenerator<Float32Array> {
  const more = () => {
    const said = decoder.ask({ want: 'more' });
    // It is looked at when its turn comes, or nobody cares any more.
    said.catch(() => undefined);
    return said;
  };
  let next = more();
  try {
    for (;;) {
      const said = await next;
      if (said.kind !== 'samples' || !said.block) return;
      next = more();
      yield said.block;
    }
  } finally {
    await decoder.ask({ want: 'end' }).catch(() => undefined);
    decoder.leave();
  }
}

async function readHead(path: string): Promise<Buffer> {
  const file = await open(path, 'r');
  try {
    const { buffer, bytesRead } = await file.read(Buffer.alloc(HEAD_BYTES), 0, HEAD_BYTES, 0);
    return buffer.subarray(0, bytesRead);
  } finally {
    await file.close();
  }
}

async function openInThread(path: string, head: Buffer, limits: ProcessLimits): Promise<DecodedSound> {
  const decoder = takeDecoder(limits);
  let said: DecodeAnswer | null = null;
  try {
    said = await decoder.ask({ want: 'open', path, head });
  } finally {
    if (said?.kind !== 'opened') decoder.leave();
  }
  if (said.kind === 'opened') return { sampleRateHz: Hertz(said.sampleRateHz), blocks: blocksOf(decoder) };
  if (said.kind === 'for-ffmpeg') return openWithFfmpeg(path, said);
  throw new Error(`Internal error: ${said.kind} where a recording was to be opened`);
}

/** @throws InputError for what is wrong with the recording */
function sayAbout(path: string, error: unknown): never {
  throw error instanceof SoundFault ? unreadableSound(path, error.fact) : error;
}

async function* spoken(path: string, blocks: AsyncIterable<Float32Array>): AsyncGenerator<Float32Array> {
  try {
    yield* blocks;
  } catch (error) {
    sayAbout(path, error);
  }
}

/**
 * Opens a recording.
 * @throws InputError when it cannot be read; a file that breaks off throws while its blocks are read.
 */
export async function decodeSound(path: string, limits = LIMITS): Promise<DecodedSound> {
  const head = await readHead(path).catch((error: unknown) => {
    throw new InputError((to) => {
      const { unreadable, expected } = to.words;
      return unreadable({ file: path, why: reasonOf(error, to), expected: expected.recording });
    });
  });
  if (head.length === 0) sayAbout(path, cannotRead({ is: 'empty' }));
  const sound = await openInThread(path, head, limits).catch((error: unknown) => sayAbout(path, error));
  return { ...sound, blocks: spoken(path, upToMost(sound)) };
}
