/**
 * From a take on disk to its report: a recording, or a MIDI file of an electronic kit.
 *
 * Conventions: what a file is, its first bytes say, not its name.
 */
import { open, readFile } from 'node:fs/promises';
import { isVoice } from '@shedbook/core';
import { formatByteProblem, readMidi } from '@shedbook/exchange';
import { type Asked, type Listened, listenToNotes, type PlayedNote, TakeListener } from '@shedbook/listen';
import { decodeSound } from '../adapters/decode.ts';
import { InputError } from '../input-error.ts';
import { reasonOf } from '../lesson-file.ts';

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

async function hearMidi(path: string, asked: Asked, warn: (line: string) => void): Promise<Listened> {
  const take = readMidi(await readFile(path));
  const errors = take.problems.filter((problem) => problem.severity === 'error');
  if (errors.length > 0) {
    throw new InputError(errors.map((problem) => formatByteProblem(path, problem)).join('\n'));
  }
  for (const problem of take.problems) warn(formatByteProblem(path, problem));
  const notes = take.notes.flatMap(({ timeSeconds, voice, levelDb }): PlayedNote[] =>
    isVoice(voice) ? [{ timeSeconds, voice, levelDb }] : [],
  );
  return listenToNotes(notes, take.durationSeconds, asked);
}

async function hearSound(path: string, asked: Asked): Promise<Listened> {
  const { sampleRateHz, blocks } = await decodeSound(path);
  const listener = new TakeListener(sampleRateHz);
  for await (const block of blocks) listener.push(block);
  return listener.finish(asked);
}

/**
 * Hears a take; `warn` gets what was left out of it.
 * @throws InputError when it cannot be read.
 */
export async function hearTake(path: string, asked: Asked, warn: (line: string) => void): Promise<Listened> {
  const start = await firstBytes(path).catch((error: unknown) => {
    throw new InputError(`${path}: ${reasonOf(error)}; expected a recording such as take.wav, or take.mid`);
  });
  return start === MIDI_MARK ? hearMidi(path, asked, warn) : hearSound(path, asked);
}
