/**
 * MP3, Ogg Vorbis and FLAC files.
 *
 * Conventions: bytes of a whole file; stereo. MP3 says how much of it is music, so players play it without a gap.
 * Sources: the encoders are LAME and libvorbis (wasm-media-encoders, MIT; LAME itself is LGPL) and libFLAC
 * (@mediabunny/flac-encoder, MPL-2.0), all compiled to WebAssembly: they run in Node and in a browser worker alike
 * and fetch nothing.
 */

import { registerFlacEncoder } from '@mediabunny/flac-encoder';
import { type Hertz, joinBytes } from '@shedbook/core';
import { AudioSample, AudioSampleSource, BufferTarget, FlacOutputFormat, Output } from 'mediabunny';
import { createMp3Encoder, createOggEncoder } from 'wasm-media-encoders';
import type { StereoAudio } from '../stereo.ts';
import { FRAME_SAMPLES, infoFrame } from './mp3-frames.ts';
import { quantise } from './wav.ts';

/** Samples handed to an encoder at once. */
const CHUNK = FRAME_SAMPLES * 64;
/** LAME's `-V 2`, about 190 kbit/s: transparent for a drum set. */
const MP3_QUALITY = 2;
/** libvorbis quality 6 of −1…10, about 192 kbit/s. */
const OGG_QUALITY = 6;
const MP3_RATES_HZ = [32000, 44100, 48000];

/** The part of the encoders' interface that is used. */
interface ChunkEncoder {
  encode(samples: readonly Float32Array[]): Uint8Array;
  finalize(): Uint8Array;
}

function encodeAll(encoder: ChunkEncoder, audio: StereoAudio): Uint8Array {
  const parts: Uint8Array[] = [];
  for (let from = 0; from < audio.left.length; from += CHUNK) {
    const part = encoder.encode([
      audio.left.subarray(from, from + CHUNK),
      audio.right.subarray(from, from + CHUNK),
    ]);
    parts.push(part.slice());
  }
  return joinBytes([...parts, encoder.finalize().slice()]);
}

/**
 * The bytes of an MP3 file.
 * @throws RangeError when the sample rate is not one of MPEG-1: 32000, 44100 or 48000.
 */
export async function encodeMp3(audio: StereoAudio): Promise<Uint8Array<ArrayBuffer>> {
  const sampleRate = audio.sampleRateHz;
  if (!MP3_RATES_HZ.includes(sampleRate)) {
    throw new RangeError(
      `At sampleRateHz: found ${sampleRate}, expected ${MP3_RATES_HZ.join(', ')} for an MP3 file`,
    );
  }
  const encoder = await createMp3Encoder();
  encoder.configure({ channels: 2, sampleRate, vbrQuality: MP3_QUALITY });
  const stream = encodeAll(encoder, audio);
  return joinBytes([infoFrame(stream, audio.left.length), stream]);
}

/** The bytes of an Ogg Vorbis file. */
export async function encodeOgg(audio: StereoAudio): Promise<Uint8Array<ArrayBuffer>> {
  const encoder = await createOggEncoder();
  encoder.configure({ channels: 2, sampleRate: audio.sampleRateHz, vbrQuality: OGG_QUALITY });
  return joinBytes([encodeAll(encoder, audio)]);
}

/** How a FLAC file is written. */
export interface FlacOptions {
  readonly bits: 16 | 24;
  /** Of the dither; the same seed gives the same samples. */
  readonly seed?: number | string;
}

/** Samples of one frame packed as the encoder takes them: 16 bits, or the top of 32. */
function packed(values: Int32Array, bits: 16 | 24): Int16Array<ArrayBuffer> | Int32Array<ArrayBuffer> {
  if (bits === 16) return Int16Array.from(values);
  return Int32Array.from(values, (value) => value << 8);
}

/** Samples, channel beside channel, as a FLAC file. */
async function flacOf(sample: AudioSample): Promise<Uint8Array<ArrayBuffer>> {
  registerFlacEncoder();
  const target = new BufferTarget();
  const output = new Output({ format: new FlacOutputFormat(), target });
  const source = new AudioSampleSource({ codec: 'flac' });
  output.addAudioTrack(source);
  await output.start();
  await source.add(sample);
  sample.close();
  await output.finalize();
  return new Uint8Array(target.buffer as ArrayBuffer);
}

/** The bytes of a FLAC file: without loss. */
export function encodeFlac(audio: StereoAudio, options: FlacOptions): Promise<Uint8Array<ArrayBuffer>> {
  const { bits, seed } = options;
  const format = bits === 16 ? 's16' : 's32';
  const data = packed(quantise(audio, bits, seed), bits);
  const [numberOfChannels, sampleRate] = [2, audio.sampleRateHz];
  return flacOf(new AudioSample({ data, format, numberOfChannels, sampleRate, timestamp: 0 }));
}

/** The bytes of a FLAC file of one channel that is in 16 bits already: sample for sample what it was. */
export function encodeMonoFlac(
  data: Int16Array<ArrayBuffer>,
  sampleRate: Hertz,
): Promise<Uint8Array<ArrayBuffer>> {
  return flacOf(new AudioSample({ data, format: 's16', numberOfChannels: 1, sampleRate, timestamp: 0 }));
}
