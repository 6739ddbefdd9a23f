import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Hertz } from '@shedbook/core';
import { encodeFlac, encodeOgg } from '@shedbook/sound';
import { expect, it, onTestFinished } from 'vitest';
import { InputError } from '../input-error.ts';
import type { ProcessLimits } from '../thread/watch-process.ts';
import { decodeSound } from './decode-sound.ts';
import { upToMost } from './decoded-sound.ts';
import { cannotRead } from './sound-fault.ts';

/** A WAV file of one sample of silence with these numbers in its header. */
function wav(rateHz: number, channels: number): Buffer {
  const samples = 1;
  const bytes = Buffer.alloc(44 + 2 * samples);
  bytes.write('RIFF', 0);
  bytes.writeUInt32LE(36 + 2 * samples, 4);
  bytes.write('WAVEfmt ', 8);
  bytes.writeUInt32LE(16, 16);
  bytes.writeUInt16LE(1, 20);
  bytes.writeUInt16LE(channels, 22);
  bytes.writeUInt32LE(rateHz, 24);
  bytes.writeUInt16LE(Math.min(2 * channels, 0xffff), 32);
  bytes.writeUInt16LE(16, 34);
  bytes.write('data', 36);
  bytes.writeUInt32LE(2 * samples, 40);
  return bytes;
}

/** A file with some bytes; gone when the test ends. @returns its path */
function fileOf(bytes: Uint8Array): string {
  const folder = mkdtempSync(join(tmpdir(), 'shedbook-hostile-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const path = join(folder, 'take');
  writeFileSync(path, bytes);
  return path;
}

/** What is said of a file. */
async function refusalOf(bytes: Uint8Array, limits?: ProcessLimits): Promise<string> {
  try {
    const { blocks } = await decodeSound(fileOf(bytes), limits);
    let samples = 0;
    for await (const block of blocks) samples += block.length;
    return `${samples} samples`;
  } catch (error) {
    if (error instanceof InputError) return error.message;
    throw error;
  }
}

it.each([0, 1, 7999, 384_001, 4_000_000_000])(
  '[HO2] a rate of %i Hz, which no recording has, is refused',
  async (rate) => {
    expect(await refusalOf(wav(rate, 1))).toContain('samples a second, which no recording has');
  },
);

it('[HO2] a WAV file of more channels than any desk has takes no memory for them', async () => {
  expect(await refusalOf(wav(44_100, 65_535))).toMatch(/unusual layout/);
});

it('[HO2] sound that goes on and on is refused', async () => {
  const minute = new Float32Array(60 * 48_000);
  async function* minutes(count: number) {
    for (let n = 0; n < count; n += 1) yield minute;
  }
  const pass = async (count: number) => {
    const sound = { sampleRateHz: Hertz(48_000), blocks: minutes(count) };
    let passed = 0;
    for await (const block of upToMost(sound)) passed += block.length;
    return passed;
  };
  // definition: half an hour is thirty minutes
  expect(await pass(30)).toBe(30 * minute.length);
  await expect(pass(31)).rejects.toMatchObject({ fact: cannotRead({ is: 'tooLong', minutes: 30 }).fact });
});

it('[HO4001] a recording on which decoding never ends is given up and said, and the next is read', async () => {
  // standard: RFC 8794, EBML elements: a header, and a segment in which no element begins
  const junk = Buffer.alloc(100);
  const header = Buffer.from('1a45dfa3874282847765626d', 'hex');
  const endless = Buffer.concat([header, Buffer.from([0x18, 0x53, 0x80, 0x67, 0x80 | junk.length]), junk]);
  const limits = { processorMs: 400, grownBytes: 2 ** 30 };
  expect(await refusalOf(endless, limits)).toContain('could not be read in the time and memory');
  expect(await refusalOf(wav(44_100, 1))).toBe('1 samples');
});

it('[HO2500] samples that are no numbers are silence, and the rest is as it was', async () => {
  // standard: RIFF WAVE, format 3: IEEE 754 floats, which may be infinite or no numbers
  const sound = [0.5, Number.NaN, -0.25, Number.POSITIVE_INFINITY, 1e30, 0.125];
  const bytes = Buffer.concat([wav(44_100, 1).subarray(0, 44), Buffer.alloc(4 * sound.length)]);
  bytes.writeUInt16LE(3, 20);
  bytes.writeUInt16LE(4, 32);
  bytes.writeUInt16LE(32, 34);
  bytes.writeUInt32LE(4 * sound.length, 40);
  for (const [i, sample] of sound.entries()) bytes.writeFloatLE(sample, 44 + 4 * i);
  const { blocks } = await decodeSound(fileOf(bytes));
  const heard: number[] = [];
  for await (const block of blocks) heard.push(...block);
  expect(heard).toEqual([0.5, 0, -0.25, 0, 0, 0.125]);
});

it('[HO2] what a decoder stumbles over is a fault of the file', async () => {
  const left = Float32Array.from({ length: 20_000 }, (_, i) => Math.sin(i / 9));
  const audio = { left, right: left, sampleRateHz: Hertz(44_100) };
  for (const good of [await encodeOgg(audio), await encodeFlac(audio, { bits: 16 })])
    for (let at = 28; at < 1400; at += 97) {
      const damaged = good.slice();
      damaged.fill(0xff, at, at + 9);
      // definition: either the sound is there, or it is said what is wrong; nothing else is thrown
      expect(await refusalOf(damaged)).toMatch(/samples$|breaks off|found/);
    }
});
