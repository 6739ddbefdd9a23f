/**
 * From a take on disk to its report: a recording, or a MIDI file of an electronic kit.
 *
 * Conventions: what a file is, its first bytes say, not its name.
 */
import { open, readFile } from 'node:fs/promises';
import { isVoice, Seconds, TakeDb } from '@shedbook/core';
import { readMidi } from '@shedbook/exchange';
import { decodeSound, InputError, reasonOf } from '@shedbook/host';
import {
  type Asked,
  createLiveListener,
  type Listened,
  listenBeside,
  listenToNotes,
  type PlayedNote,
  type Recording,
  startLoops,
  TakeListener,
} from '@shedbook/listen';
import { formatByteProblem } from '@shedbook/words';
import type { Speaker } from '../terminal.ts';

const MIDI_MARK = 'MThd';

async function firstBytes(path: string): Promise<string> {
  const file = await open(path, 'r');
  try {
    const { buffer, bytesRead } = await file.read(Buffer.alloc(MIDI_MARK.length), 0, MIDI_MARK.length, 0);
    return buffer.toString('latin1', 0, bytesRead);
  } finally {
    await file.close();
  }
}

/** How a take is to be heard. */
export interface HearOptions {
  /** Told what was left out of the take. */
  readonly terminal: Speaker;
  /** Where the recording began with the click: how late the click sounds in it; else null. */
  readonly latencySeconds: Seconds | null;
  /** A recording of what a loudspeaker played during the take, or null. */
  readonly playing: string | null;
}

async function hearMidi(
  path: string,
  asked: Asked,
  { terminal, latencySeconds }: HearOptions,
): Promise<Listened> {
  const take = readMidi(await readFile(path));
  const errors = take.problems.filter((problem) => problem.severity === 'error');
  if (errors.length > 0) {
    throw new InputError(({ language }) =>
      errors.map((problem) => formatByteProblem(path, problem, language)).join('\n'),
    );
  }
  for (const problem of take.problems)
    terminal.warn(formatByteProblem(path, problem, terminal.catalogue.language));
  const notes = take.notes.flatMap(({ timeSeconds, voice, levelDb }): PlayedNote[] =>
    isVoice(voice) ? [{ timeSeconds, voice, levelDb: TakeDb(levelDb) }] : [],
  );
  if (latencySeconds === null) return listenToNotes(notes, take.durationSeconds, asked);
  const listener = createLiveListener(asked, { latencySeconds });
  startLoops(listener, asked, Seconds((notes.at(-1)?.timeSeconds ?? 0) - latencySeconds));
  for (const { timeSeconds, voice, levelDb } of notes) listener.note(timeSeconds, voice, levelDb);
  return listener.finish();
}

/** Hears a recording against the click that it began with. */
async function hearAlong(path: string, asked: Asked, latencySeconds: Seconds): Promise<Listened> {
  const { sampleRateHz, blocks } = await decodeSound(path);
  const listener = createLiveListener(asked, { sampleRateHz, latencySeconds });
  let last = 0;
  for await (const block of blocks) {
    for (const { timeSeconds } of listener.push(block)) last = Math.max(last, timeSeconds);
  }
  startLoops(listener, asked, Seconds(last - latencySeconds));
  return listener.finish();
}

async function readRecording(path: string): Promise<Recording> {
  const { sampleRateHz, blocks } = await decodeSound(path);
  const pieces: Float32Array[] = [];
  for await (const block of blocks) pieces.push(block.slice());
  const samples = new Float32Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    samples.set(piece, at);
    at += piece.length;
  }
  return { samples, sampleRateHz };
}

async function hearSound(
  path: string,
  asked: Asked,
  { latencySeconds, playing }: HearOptions,
): Promise<Listened> {
  if (playing !== null) return listenBeside(await readRecording(path), await readRecording(playing), asked);
  if (latencySeconds !== null) return hearAlong(path, asked, latencySeconds);
  const { sampleRateHz, blocks } = await decodeSound(path);
  const listener = new TakeListener(sampleRateHz);
  for await (const block of blocks) listener.push(block);
  return listener.finish(asked);
}

/**
 * Hears a take.
 * @throws InputError when it cannot be read.
 */
export async function hearTake(path: string, asked: Asked, options: HearOptions): Promise<Listened> {
  const start = await firstBytes(path).catch((error: unknown) => {
    throw new InputError((to) => {
      const { unreadable, expected } = to.words;
      return unreadable({ file: path, why: reasonOf(error, to), expected: expected.take });
    });
  });
  return start === MIDI_MARK ? hearMidi(path, asked, options) : hearSound(path, asked, options);
}
