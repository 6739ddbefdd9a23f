/**
 * Recordings of performances, as FFmpeg reads them: sound and picture of anything that a telephone makes.
 *
 * Conventions: seconds from the beginning of the file, whether its sound begins there or later: the same for sound and
 * picture.
 */
import { execFile } from 'node:child_process';
import { promisify } from 'node:util';
import type { Hertz } from '@shedbook/core';
import type { Recorded } from '@shedbook/film';
import { FfmpegFault, ffmpegSamples } from '../decode/ffmpeg-samples.ts';
import { unreadableSound } from '../decode/say-fault.ts';
import { InputError } from '../input-error.ts';

const run = promisify(execFile);

/** Files of the performances that a film shows. */
export type Recordings = ReadonlyMap<Recorded, string>;

/** The file of a performance. */
export function pathOf(recordings: Recordings, recorded: Recorded): string {
  const path = recordings.get(recorded);
  if (path === undefined) throw new RangeError('Internal error: a performance without a file');
  return path;
}

/** Sound from the beginning of the file on: what begins later than the picture has silence before it. */
const FROM_BEGINNING = 'aresample=async=1:first_pts=0';
const QUIET = ['-v', 'error', '-nostdin'];

function unreadable(path: string, why: string): InputError {
  return new InputError(({ words }) =>
    words.unreadable({ file: path, why, expected: words.expected.performance }),
  );
}

/**
 * The sound of a recording in blocks of mono samples.
 * @throws InputError where it has none that can be read, or there is no FFmpeg
 */
export async function* readMono(
  path: string,
  sampleRateHz: Hertz,
  signal: AbortSignal,
): AsyncGenerator<Float32Array> {
  try {
    const of = ['-map', '0:a:0', '-af', FROM_BEGINNING];
    yield* ffmpegSamples({ path, sampleRateHz, of, signal });
  } catch (error) {
    if (!(error instanceof FfmpegFault)) throw error;
    const { why } = error;
    if (why === 'missing') throw new InputError(({ words }) => words.film.noFfmpeg);
    throw why === 'too-long' ? unreadableSound(path, { fault: 'too-much' }) : unreadable(path, why.said);
  }
}

/** A stretch of a recording. */
interface Stretch {
  readonly fromSeconds: number;
  readonly toSeconds: number;
  readonly sampleRateHz: Hertz;
}

/** The sound of a stretch of a recording: two channels of 32-bit floats, interleaved. */
export async function readStretch(
  path: string,
  { fromSeconds, toSeconds, sampleRateHz }: Stretch,
  signal: AbortSignal,
): Promise<Buffer> {
  const cut = `${FROM_BEGINNING},atrim=${fromSeconds.toFixed(6)}:${toSeconds.toFixed(6)}`;
  const form = ['-f', 'f32le', '-ac', '2', '-ar', `${sampleRateHz}`, '-'];
  const args = [...QUIET, '-i', path, '-map', '0:a:0', '-af', cut, ...form];
  const { stdout } = await run('ffmpeg', args, { signal, encoding: 'buffer', maxBuffer: 2 ** 31 - 1 });
  return stdout;
}

/** How large the picture of a recording is as it is looked at; null where it has none: a cover is no picture. */
export async function pictureSize(path: string): Promise<Recorded['picture']> {
  // standard: PPM (netpbm), "P6", width and height begin the file
  const form = ['-vf', 'scale=iw*sar:ih,setsar=1', '-frames:v', '1', '-c:v', 'ppm', '-f', 'image2pipe', '-'];
  const args = [...QUIET, '-i', path, '-map', '0:V:0', ...form];
  const told = await run('ffmpeg', args, { encoding: 'buffer', maxBuffer: 1 << 28 }).catch(() => null);
  const [, width, height] = /^P6\s+(\d+)\s+(\d+)/.exec(told?.stdout.toString('latin1', 0, 64) ?? '') ?? [];
  return width && height ? { widthPx: Number(width), heightPx: Number(height) } : null;
}
