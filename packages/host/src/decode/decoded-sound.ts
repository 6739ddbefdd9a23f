/**
 * What decoding gives.
 *
 * Conventions: blocks of mono samples, −1 to 1, channels averaged; blocks of some thousand samples, so a file's
 * length does not matter.
 */
import type { Hertz } from '@shedbook/core';
import { breaksOff, cannotRead, endsEarly, type FoundSound, SoundFault } from './sound-fault.ts';

/** A file that is being decoded. */
export interface DecodedSound {
  readonly sampleRateHz: Hertz;
  readonly blocks: AsyncIterable<Float32Array>;
}

/** What has to go through FFmpeg, and how long it is said to be. */
export interface ForFfmpeg {
  readonly forFfmpeg: FoundSound;
  readonly wholeSeconds: number | null;
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

/** This much less than was promised is no fault: encoders round to whole frames. */
const MISSING_SECONDS = 0.2;

/** Rates that recordings have, in hertz: from a telephone's to twice the highest of any recorder. */
const RATES_HZ = { least: 8000, most: 384_000 } as const;

/** Samples of a recording at most: half an hour at 48 kHz, which fits in memory as a whole. */
const MOST_SAMPLES = 30 * 60 * 48_000;

/** Whether recordings have a rate, in hertz. */
export function isRate(hertz: number): hertz is Hertz {
  return hertz >= RATES_HZ.least && hertz <= RATES_HZ.most;
}

/** The rate of a recording. @throws SoundFault where no recording has it */
export function requireRate(hertz: number): Hertz {
  if (isRate(hertz)) return hertz;
  throw cannotRead({ is: 'rate', sampleRateHz: hertz });
}

/** Largest sample that is a sound's, as a factor of full scale: 120 dB above it; floats may hold anything. */
const LARGEST = 1e6;

function isSound(sample: number): boolean {
  return Math.abs(sample) <= LARGEST;
}

/** Makes samples that are no sound silence: one of them would be all that a filter knows from then on. */
function withoutNonsense(block: Float32Array): Float32Array {
  // a plain loop takes a seventh of the time that `every` does, and nearly all blocks are sound
  for (let i = 0; i < block.length; i += 1)
    if (!isSound(block[i] as number)) return block.map((sample) => (isSound(sample) ? sample : 0));
  return block;
}

/**
 * Passes blocks on as far as a recording goes; what is no sound in them is silence.
 * @throws SoundFault where it goes on and on
 */
export async function* upToMost({ sampleRateHz, blocks }: DecodedSound): AsyncGenerator<Float32Array> {
  let samples = 0;
  for await (const block of blocks) {
    samples += block.length;
    if (samples > MOST_SAMPLES) {
      const minutes = Math.round(MOST_SAMPLES / sampleRateHz / 60);
      throw cannotRead({ is: 'tooLong', minutes });
    }
    yield withoutNonsense(block);
  }
}

/**
 * What a decoder makes of a file that may be damaged anywhere: whatever it stumbles over is a fault of the file.
 * @throws SoundFault where it stumbles
 */
export async function ofFile<T>(decoding: () => T | Promise<T>): Promise<T> {
  try {
    return await decoding();
  } catch (error) {
    throw error instanceof SoundFault ? error : breaksOff({ is: 'packet' });
  }
}

/** Lets a decoder go; one that broke down over a file may not even bear that. */
export function letGo(free: () => void): void {
  try {
    free();
  } catch {
    // Its memory goes with it.
  }
}

/** Passes blocks on and counts them. @throws SoundFault at the end where more was promised. */
export async function* inFull(
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
    throw endsEarly(seconds, wholeSeconds);
}
