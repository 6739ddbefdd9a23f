/**
 * What decoding gives, and the words for what cannot be decoded.
 *
 * Conventions: blocks of mono samples, −1 to 1, channels averaged; blocks of some thousand samples, so a file's
 * length does not matter.
 */
import type { Hertz } from '@shedbook/core';
import { InputError } from '../input-error.ts';

/** A file that is being decoded. */
export interface DecodedSound {
  readonly sampleRateHz: Hertz;
  readonly blocks: AsyncIterable<Float32Array>;
}

/** Channels averaged into one. */
export function mixDown(channels: readonly Float32Array[]): Float32Array {
  const [first] = channels;
  if (!first) return new Float32Array(0);
  if (channels.length === 1) return first;
  const mono = new Float32Array(first.length);
  for (const channel of channels) {
    for (let i = 0; i < mono.length; i += 1) mono[i] = (mono[i] ?? 0) + (channel[i] ?? 0) / channels.length;
  }
  return mono;
}

/** The error for a file in a format that no decoder here reads. */
export function cannotRead(path: string, found: string): InputError {
  return new InputError(
    `${path}: found ${found}, expected a recording such as take.wav, take.mp3, take.flac, take.ogg or take.webm`,
  );
}

/** The error for a file that breaks off; `found` says what is there of it. */
export function breaksOff(path: string, found: string): InputError {
  return new InputError(`${path}: the file breaks off: found ${found}; was it copied whole?`);
}

/** The error for a file that ends before it should. */
export function endsEarly(path: string, heardSeconds: number, wholeSeconds: number): InputError {
  return breaksOff(path, `${heardSeconds.toFixed(1)} of ${wholeSeconds.toFixed(1)} seconds`);
}

/** This much less than was promised is no fault: encoders round to whole frames. */
const MISSING_SECONDS = 0.2;

/** Passes blocks on and counts them. @throws InputError at the end where more was promised. */
export async function* inFull(
  path: string,
  sound: DecodedSound,
  wholeSeconds: number | null,
): AsyncGenerator<Float32Array> {
  let samples = 0;
  for await (const block of sound.blocks) {
    samples += block.length;
    if (block.length > 0) yield block;
  }
  const seconds = samples / sound.sampleRateHz;
  if (wholeSeconds !== null && seconds < wholeSeconds - MISSING_SECONDS)
    throw endsEarly(path, seconds, wholeSeconds);
}
