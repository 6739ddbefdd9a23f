/**
 * WAV files: the sound itself, 16 or 24 bits or floating point.
 *
 * Conventions: little-endian, interleaved. Whole numbers are dithered with triangular noise of two steps' width,
 * from a seed, so that quantising adds hiss instead of distortion and the same sound gives the same file.
 * Sources: Microsoft and IBM, Multimedia Programming Interface and Data Specifications 1.0 (1991), RIFF WAVE;
 * Microsoft, WAVEFORMATEX (formats 1 and 3, `fact` for format 3); S. P. Lipshitz et al., "Quantization and
 * dither", JAES 1992 (triangular dither of 2 LSB peak to peak).
 */
import { seededRandom } from '@shedbook/core';
import type { StereoAudio } from '../stereo.ts';

/** How samples are kept. */
export type WavFormat = 'int16' | 'int24' | 'float32';

/** How a WAV file is written. */
export interface WavOptions {
  readonly format: WavFormat;
  /** Of the dither; the same seed gives the same bytes. */
  readonly seed?: number | string;
}

const BYTES: Readonly<Record<WavFormat, number>> = { int16: 2, int24: 3, float32: 4 };
const CHANNELS = 2;

function writeText(view: DataView, at: number, text: string): void {
  for (let i = 0; i < text.length; i += 1) view.setUint8(at + i, text.charCodeAt(i));
}

function writeHeader(view: DataView, format: WavFormat, rate: number, frames: number): number {
  const frame = CHANNELS * BYTES[format];
  const float = format === 'float32';
  writeText(view, 0, 'RIFF');
  view.setUint32(4, view.byteLength - 8, true);
  writeText(view, 8, 'WAVEfmt ');
  view.setUint32(16, float ? 18 : 16, true);
  view.setUint16(20, float ? 3 : 1, true);
  view.setUint16(22, CHANNELS, true);
  view.setUint32(24, rate, true);
  view.setUint32(28, rate * frame, true);
  view.setUint16(32, frame, true);
  view.setUint16(34, 8 * BYTES[format], true);
  let at = 36;
  if (float) {
    view.setUint16(36, 0, true);
    writeText(view, 38, 'fact');
    view.setUint32(42, 4, true);
    view.setUint32(46, frames, true);
    at = 50;
  }
  writeText(view, at, 'data');
  view.setUint32(at + 4, frames * frame, true);
  return at + 8;
}

/** Interleaved whole numbers of `bits` bits, dithered; what is outside full scale is held at it. */
export function quantise(audio: StereoAudio, bits: 16 | 24, seed: number | string = 'dither'): Int32Array {
  const random = seededRandom(seed);
  const most = 2 ** (bits - 1) - 1;
  const out = new Int32Array(audio.left.length * CHANNELS);
  const one = (sample: number) => {
    const value = Math.round(sample * most + random.next() - random.next());
    return Math.max(-most - 1, Math.min(most, value));
  };
  for (let i = 0; i < audio.left.length; i += 1) {
    out[2 * i] = one(audio.left[i] as number);
    out[2 * i + 1] = one(audio.right[i] as number);
  }
  return out;
}

function writeInts(bytes: Uint8Array, at: number, values: Int32Array, size: 2 | 3): void {
  let to = at;
  for (const value of values) {
    bytes[to] = value;
    bytes[to + 1] = value >> 8;
    if (size === 3) bytes[to + 2] = value >> 16;
    to += size;
  }
}

function writeFloats(view: DataView, at: number, audio: StereoAudio): void {
  for (let i = 0; i < audio.left.length; i += 1) {
    view.setFloat32(at + 8 * i, audio.left[i] as number, true);
    view.setFloat32(at + 8 * i + 4, audio.right[i] as number, true);
  }
}

/** The bytes of a WAV file. */
export function encodeWav(audio: StereoAudio, options: WavOptions): Uint8Array<ArrayBuffer> {
  const { format, seed } = options;
  const frames = audio.left.length;
  const header = format === 'float32' ? 58 : 44;
  const data = frames * CHANNELS * BYTES[format];
  const bytes = new Uint8Array(header + data + (data % 2));
  const view = new DataView(bytes.buffer);
  const at = writeHeader(view, format, audio.sampleRateHz, frames);
  if (format === 'float32') writeFloats(view, at, audio);
  else if (format === 'int16') writeInts(bytes, at, quantise(audio, 16, seed), 2);
  else writeInts(bytes, at, quantise(audio, 24, seed), 3);
  return bytes;
}
