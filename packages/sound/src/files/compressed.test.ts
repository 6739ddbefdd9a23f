import { Hertz } from '@shedbook/core';
import { FLACDecoder } from '@wasm-audio-decoders/flac';
import { OggVorbisDecoder } from '@wasm-audio-decoders/ogg-vorbis';
import { MPEGDecoder } from 'mpg123-decoder';
import { describe, expect, it } from 'vitest';
import type { StereoAudio } from '../stereo.ts';
import { encodeFlac, encodeMonoFlac, encodeMp3, encodeOgg } from './compressed.ts';
import { crc16, findFrames, infoFrame } from './mp3-frames.ts';
import { quantise } from './wav.ts';

const RATE = Hertz(44100);

/** A second of a soft tone with one loud blip, different left and right. */
function signal(length: number = RATE): StereoAudio {
  const tone = (gain: number) =>
    Float32Array.from({ length }, (_, i) => {
      const blip = 0.8 * Math.exp(-(((i - length / 2) / 40) ** 2)) * Math.cos((i - length / 2) / 12);
      return gain * (0.05 * Math.sin((2 * Math.PI * 440 * i) / RATE) + blip);
    });
  return { left: tone(1), right: tone(0.5), sampleRateHz: RATE };
}

/** The number of samples by which `found` is later than `expected`, by the best correlation within ±`reach`. */
function delay(found: Float32Array, expected: Float32Array, reach: number): number {
  let [best, at] = [Number.NEGATIVE_INFINITY, 0];
  for (let shift = -reach; shift <= reach; shift += 1) {
    let sum = 0;
    for (let i = 20000; i < 24000; i += 1) sum += (found[i + shift] ?? 0) * (expected[i] as number);
    if (sum > best) [best, at] = [sum, shift];
  }
  return at;
}

describe('MP3 files', () => {
  it('[SO11] decode to the length and place of the sound, by an independent decoder', async () => {
    const audio = signal();
    const bytes = await encodeMp3(audio);
    // library: mpg123 by mpg123-decoder 1.0.3, gapless
    const decoder = new MPEGDecoder({ enableGapless: true });
    await decoder.ready;
    const { channelData, samplesDecoded } = decoder.decode(bytes);
    decoder.free();
    expect(samplesDecoded).toBe(audio.left.length);
    expect(delay(channelData[0] as Float32Array, audio.left, 1200)).toBe(0);
  });

  it('[SO12] begin with a frame that tells delay, padding and length', async () => {
    const audio = signal(5000);
    const bytes = await encodeMp3(audio);
    const frames = findFrames(bytes);
    const view = new DataView(bytes.buffer);
    const text = (at: number, size: number) => String.fromCharCode(...bytes.subarray(at, at + size));
    expect([text(36, 4), text(156, 4)]).toEqual(['Xing', 'LAME']);
    expect(view.getUint32(44)).toBe(frames.length - 1);
    expect(view.getUint32(48)).toBe(bytes.length);
    const both = (bytes[177] as number) * 65536 + view.getUint16(178);
    // definition: delay + music + padding fill the frames of 1152 samples
    expect((both >> 12) + (both & 4095) + 5000).toBe((frames.length - 1) * 1152);
    expect(view.getUint16(190)).toBe(crc16(bytes.subarray(0, 190)));
  });

  it('[SO12] have a checksum that is CRC-16/ARC', () => {
    // standard: CRC catalogue, CRC-16/ARC: check value of "123456789" is 0xBB3D
    expect(crc16(Uint8Array.from('123456789', (digit) => digit.charCodeAt(0)))).toBe(0xbb3d);
  });

  it('[SO13] are refused for a rate that MPEG-1 has not', async () => {
    await expect(encodeMp3({ ...signal(100), sampleRateHz: Hertz(22050) })).rejects.toThrow(
      'At sampleRateHz: found 22050, expected 32000, 44100, 48000 for an MP3 file',
    );
    expect(() => infoFrame(Uint8Array.from([0, 1, 2, 3]), 1)).toThrow('no MP3 frame at byte 0');
  });
});

describe('Ogg Vorbis files', () => {
  it('[SO11] decode to the length and place of the sound, by an independent decoder', async () => {
    const audio = signal();
    // library: libvorbis by @wasm-audio-decoders/ogg-vorbis 0.1.20
    const decoder = new OggVorbisDecoder();
    await decoder.ready;
    const { channelData, samplesDecoded } = await decoder.decodeFile(await encodeOgg(audio));
    decoder.free();
    expect(samplesDecoded).toBe(audio.left.length);
    expect(delay(channelData[0] as Float32Array, audio.left, 1200)).toBe(0);
  });
});

const BITS = [16, 24] as const;

describe('FLAC files', () => {
  it.each(BITS)('[SO14] keep every sample at %i bits, by an independent decoder', async (bits) => {
    const audio = signal();
    // library: libFLAC by @wasm-audio-decoders/flac 0.2.11
    const decoder = new FLACDecoder();
    await decoder.ready;
    const { channelData, samplesDecoded } = await decoder.decodeFile(
      await encodeFlac(audio, { bits, seed: 'f' }),
    );
    await decoder.free();
    expect(samplesDecoded).toBe(audio.left.length);
    const expected = quantise(audio, bits, 'f');
    // That decoder hands out floating point, full scale 2^(bits − 1) − 1
    const found = (channelData[0] as Float32Array).map((sample) =>
      Math.round(sample * (2 ** (bits - 1) - 1)),
    );
    expect(found.every((value, i) => value === expected[2 * i])).toBe(true);
  });

  it('[SO700] keep every sample of a recording of one channel, by an independent decoder', async () => {
    const recorded = Int16Array.from(signal().left.subarray(0, 48_000), (value) =>
      Math.round(value * 32_767),
    );
    // library: libFLAC by @wasm-audio-decoders/flac 0.2.11
    const decoder = new FLACDecoder();
    await decoder.ready;
    const { channelData, sampleRate } = await decoder.decodeFile(
      await encodeMonoFlac(recorded, Hertz(44_100)),
    );
    await decoder.free();
    expect([channelData.length, sampleRate]).toEqual([1, 44_100]);
    const found = Int16Array.from(channelData[0] as Float32Array, (value) => Math.round(value * 32_767));
    expect(found).toEqual(recorded);
  });
});
