/** The sound of a film on disk: bit by bit, so that memory does not grow with the film. */
import { type FileHandle, open } from 'node:fs/promises';
import { join } from 'node:path';
import type { Hertz } from '@shedbook/core';
import { encodeMastered, type Film, type FilmEnding, renderScene, type Scene } from '@shedbook/film';
import type { Kit, StereoAudio } from '@shedbook/sound';
import { loadSpokenWords } from '../spoken-words.ts';
import { encodeSound } from './encoder.ts';
import { pathOf, type Recordings, readStretch } from './recordings.ts';

function interleave({ left, right }: StereoAudio): Uint8Array {
  const out = new Float32Array(2 * left.length);
  for (let i = 0; i < left.length; i += 1) {
    out[2 * i] = left[i] as number;
    out[2 * i + 1] = right[i] as number;
  }
  return new Uint8Array(out.buffer);
}

/** Two channels that were interleaved. */
function separate(bytes: Buffer, sampleRateHz: Hertz): StereoAudio {
  const both = new Float32Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length));
  const [left, right] = [new Float32Array(both.length / 2), new Float32Array(both.length / 2)];
  for (let i = 0; i < left.length; i += 1) {
    left[i] = both[2 * i] as number;
    right[i] = both[2 * i + 1] as number;
  }
  return { left, right, sampleRateHz };
}

/** What was recorded of the performance that a scene shows; null where it shows none. */
async function soundShown(
  scene: Scene,
  recordings: Recordings,
  { sampleRateHz, signal }: { readonly sampleRateHz: Hertz; readonly signal: AbortSignal },
): Promise<StereoAudio | null> {
  if (scene.kind === 'title' || !scene.shown) return null;
  const { recorded, fromSeconds, toSeconds } = scene.shown;
  const path = pathOf(recordings, recorded);
  return separate(await readStretch(path, { fromSeconds, toSeconds, sampleRateHz }, signal), sampleRateHz);
}

/** What is told while the sound is made: the part that is done, 0 to 1. */
export type TellPart = (part: number) => void;

/** Where and how the sound of a film is made. */
export interface SoundOrder {
  readonly kit: Kit;
  readonly recordings: Recordings;
  /** Folder for what is needed on the way, and for the sound itself. */
  readonly folder: string;
  readonly ending: FilmEnding;
  readonly signal: AbortSignal;
  readonly tell: TellPart;
}

/** Bytes of a moment: two channels of 32-bit floats. */
const FRAME_BYTES = 8;

async function readExactly(file: FileHandle, from: number, length: number): Promise<Buffer> {
  const bytes = Buffer.alloc(length);
  let got = 0;
  while (got < length) {
    const { bytesRead } = await file.read(bytes, got, length - got, from + got);
    if (bytesRead === 0) throw new RangeError('Internal error: less sound was kept than was made');
    got += bytesRead;
  }
  return bytes;
}

/** Writes the sound of every scene one after the other. @returns how many samples they are */
async function writePlain(film: Film, { kit, recordings, signal, tell }: SoundOrder, file: FileHandle) {
  let samples = 0;
  const { countAloud } = film.request;
  const words = countAloud ? await loadSpokenWords(countAloud, kit.sampleRateHz) : null;
  for (const [index, scene] of film.scenes.entries()) {
    signal.throwIfAborted();
    const recording = await soundShown(scene, recordings, { sampleRateHz: kit.sampleRateHz, signal });
    for (const block of renderScene(scene, film, { kit, recording, words })) {
      await file.writeFile(interleave(block));
      samples += block.left.length;
      signal.throwIfAborted();
    }
    tell((0.6 * (index + 1)) / film.scenes.length);
  }
  return samples;
}

async function writeParts(parts: AsyncIterable<StereoAudio>, path: string): Promise<void> {
  const file = await open(path, 'w');
  try {
    for await (const part of parts) await file.writeFile(interleave(part));
  } finally {
    await file.close();
  }
}

/** Makes the sound of a film, encoded and at its loudness. @returns the path of the file */
export async function writeFilmSound(film: Film, order: SoundOrder): Promise<string> {
  const { kit, folder, ending, signal, tell } = order;
  const { sampleRateHz } = kit;
  const plain = await open(join(folder, 'plain.f32'), 'w+');
  const whole = join(folder, 'whole.f32');
  const encoded = join(folder, `sound${ending}`);
  try {
    const samples = await writePlain(film, order, plain);
    const read = async (from: number, to: number) => {
      signal.throwIfAborted();
      const bytes = await readExactly(plain, FRAME_BYTES * from, FRAME_BYTES * (to - from));
      return separate(bytes, sampleRateHz);
    };
    const encode = async (parts: AsyncIterable<StereoAudio>) => {
      await writeParts(parts, whole);
      return encodeSound({ path: whole, sampleRateHz }, ending, encoded, signal);
    };
    await encodeMastered({ samples, sampleRateHz, read }, encode, (part) => tell(0.6 + 0.4 * part));
  } finally {
    await plain.close();
  }
  tell(1);
  return encoded;
}
