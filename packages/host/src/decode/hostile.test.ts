import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Hertz } from '@shedbook/core';
import { encodeFlac, encodeOgg } from '@shedbook/sound';
import { expect, it, onTestFinished } from 'vitest';
import { InputError } from '../input-error.ts';
import { decodeSound } from './decode-sound.ts';
import { upToMost } from './decoded-sound.ts';

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

/** What is said of a file. */
async function refusalOf(bytes: Uint8Array): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'shedbook-hostile-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const path = join(folder, 'take');
  writeFileSync(path, bytes);
  try {
    const { blocks } = await decodeSound(path);
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
    for await (const block of upToMost('take', sound)) passed += block.length;
    return passed;
  };
  // definition: half an hour is thirty minutes
  expect(await pass(30)).toBe(30 * minute.length);
  await expect(pass(31)).rejects.toThrow('more than 30 minutes of sound');
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
