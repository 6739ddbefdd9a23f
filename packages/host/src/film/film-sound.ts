/** The sound of a film on disk: scene by scene, so that memory does not grow with the film. */
import { open, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { FullScaleDb, Hertz } from '@shedbook/core';
import {
  FIRST_CEILING_DBTP,
  type Film,
  findMastering,
  type KeptScenes,
  type Mastering,
  master,
  renderScene,
  type Scene,
} from '@shedbook/film';
import type { Kit, StereoAudio } from '@shedbook/sound';
import { encodeSound, type FilmEnding } from './encoder.ts';
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

/** What players decode stays under this true peak. */
const MOST_DBTP = -1.1;
/** How often a lower ceiling is tried. */
const MOST_TRIES = 4;

/** Writes what is read of a few scenes into one file at their loudness. */
async function writeMastered(scenes: KeptScenes, mastering: Mastering, path: string): Promise<void> {
  const file = await open(path, 'w');
  try {
    for (let index = 0; index < scenes.count; index += 1)
      await file.writeFile(interleave(master(await scenes.read(index), mastering)));
  } finally {
    await file.close();
  }
}

/**
 * Makes the sound of a film, encoded and at its loudness. Encoding lets peaks grow: where they grow too high, it is
 * done again with a lower ceiling.
 * @returns the path of the file
 */
export async function writeFilmSound(film: Film, order: SoundOrder): Promise<string> {
  const { kit, recordings, folder, ending, signal, tell } = order;
  const count = film.scenes.length;
  const plain = (index: number) => join(folder, `scene-${index}.f32`);
  for (const [index, scene] of film.scenes.entries()) {
    signal.throwIfAborted();
    const recording = await soundShown(scene, recordings, { sampleRateHz: kit.sampleRateHz, signal });
    await writeFile(plain(index), interleave(renderScene(scene, film, { kit, recording })));
    tell((0.6 * (index + 1)) / count);
  }
  const read = async (index: number) => {
    signal.throwIfAborted();
    return separate(await readFile(plain(index)), Hertz(kit.sampleRateHz));
  };
  const whole = join(folder, 'whole.f32');
  const encoded = join(folder, `sound${ending}`);
  let ceiling = FIRST_CEILING_DBTP;
  for (let round = 1; round <= MOST_TRIES; round += 1) {
    await writeMastered({ count, read }, await findMastering({ count, read }, ceiling), whole);
    const peak = await encodeSound({ path: whole, sampleRateHz: kit.sampleRateHz }, ending, encoded, signal);
    tell(0.6 + (0.4 * round) / MOST_TRIES);
    if (peak <= MOST_DBTP) break;
    ceiling = FullScaleDb(ceiling - (peak - MOST_DBTP) - 0.2);
  }
  tell(1);
  return encoded;
}
