import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { decodeSound } from './decode-sound.ts';

let folder = '';
const inFolder = (name: string) => join(folder, name);

function ffmpeg(...args: readonly string[]): Buffer {
  return execFileSync('ffmpeg', ['-v', 'error', '-y', ...args], { maxBuffer: 2 ** 28 });
}

/** Three seconds: a rising tone with strokes on the left, another tone on the right. */
const SIGNAL =
  'aevalsrc=0.3*sin(2*PI*(200+300*t)*t)*exp(-9*mod(t\\,0.25))|0.4*sin(2*PI*331*t)*lt(mod(t\\,0.5)\\,0.4):s=44100:d=3';

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'shedbook-decode-'));
  ffmpeg('-f', 'lavfi', '-i', SIGNAL, inFolder('source.wav'));
});

afterAll(() => rmSync(folder, { recursive: true }));
afterEach(() => vi.unstubAllEnvs());

async function decode(name: string) {
  const { sampleRateHz, blocks } = await decodeSound(inFolder(name));
  const samples: number[] = [];
  for await (const block of blocks) for (const sample of block) samples.push(sample);
  return { sampleRateHz, samples };
}

/** The mean of both channels as FFmpeg decodes them. */
function reference(name: string, sampleRateHz: number): Float32Array {
  const bytes = ffmpeg('-i', inFolder(name), '-f', 'f32le', '-ac', '2', '-ar', `${sampleRateHz}`, '-');
  return Float32Array.from({ length: bytes.length / 8 }, (_, i) => {
    return (bytes.readFloatLE(8 * i) + bytes.readFloatLE(8 * i + 4)) / 2;
  });
}

/** How alike two signals are, whatever their levels: 1 is the same. */
function likeness(a: readonly number[], b: Float32Array): number {
  let [ab, aa, bb] = [0, 0, 0];
  for (let i = 0; i < Math.min(a.length, b.length); i += 1) {
    const [x, y] = [a[i] as number, b[i] as number];
    ab += x * y;
    aa += x * x;
    bb += y * y;
  }
  return ab / Math.sqrt(aa * bb);
}

/** Half a packet of Opus, the longest that two decoders disagree about at the end, in seconds. */
const END_SECONDS = 0.02;

describe('decoding recordings', () => {
  it.each([
    ['8-bit.wav', '-c:a', 'pcm_u8'],
    ['16-bit.wav', '-c:a', 'pcm_s16le'],
    ['24-bit.wav', '-c:a', 'pcm_s24le'],
    ['double.wav', '-c:a', 'pcm_f64le'],
    ['take.flac'],
    ['take.oga', '-c:a', 'flac', '-f', 'ogg'],
    ['take.mp3', '-b:a', '128k'],
    ['untagged.mp3', '-b:a', '160k', '-write_xing', '0', '-id3v2_version', '0'],
    ['take.ogg', '-c:a', 'libvorbis'],
    ['take.opus', '-c:a', 'libopus'],
    ['take.webm', '-c:a', 'libopus'],
    ['take.mkv', '-c:a', 'flac'],
    ['opus.mp4', '-c:a', 'libopus'],
  ])('[CL23] decodes %s itself as FFmpeg does', async (name, ...args) => {
    ffmpeg('-i', inFolder('source.wav'), ...args, inFolder(name));
    const wanted = reference(name, name === 'source.wav' || /opus|webm/.test(name) ? 48_000 : 44_100);
    vi.stubEnv('PATH', '');
    const { sampleRateHz, samples } = await decode(name);
    // library: FFmpeg decodes the same file
    expect(Math.abs(samples.length - wanted.length)).toBeLessThan(END_SECONDS * sampleRateHz);
    expect(likeness(samples, wanted)).toBeGreaterThan(0.9999);
  });

  it.each([
    ['take.m4a', '-c:a', 'aac'],
    ['phone.mov', '-c:a', 'aac', '-f', 'mov'],
    ['take.aiff'],
    ['unusual.wav', '-c:a', 'adpcm_ms'],
  ])('[CL24] decodes %s through FFmpeg', async (name, ...args) => {
    ffmpeg('-i', inFolder('source.wav'), ...args, inFolder(name));
    const { sampleRateHz, samples } = await decode(name);
    const wanted = reference(name, sampleRateHz);
    // library: FFmpeg decodes the same file
    expect(samples).toHaveLength(wanted.length);
    expect(likeness(samples, wanted)).toBeGreaterThan(0.9999);
  });

  it('[CL24] says what to do where FFmpeg is needed and not there', async () => {
    ffmpeg('-i', inFolder('source.wav'), '-c:a', 'aac', inFolder('lonely.m4a'));
    vi.stubEnv('PATH', '');
    await expect(decode('lonely.m4a')).rejects.toThrow(
      /lonely\.m4a: found AAC sound, which is not decoded here; install FFmpeg, or save the recording as WAV or FLAC$/,
    );
  });
});

describe('what is no recording', () => {
  it.each([
    ['words.mp3', 'A take of the first exercise.\n', 'found a text file, expected a recording'],
    ['nothing.wav', '', 'found an empty file, expected a recording'],
    ['noise.bin', '\u0000\u0001'.repeat(400), 'found an unknown format'],
    ['header.wav', 'RIFF\u0000\u0000\u0000\u0000WAVE', 'found a WAV file without sound'],
    ['header.flac', 'fLaC\u0000\u0000\u0000\u0022', 'found a FLAC file without sound'],
  ])('[CL25] refuses %s', async (name, text, message) => {
    writeFileSync(inFolder(name), text, 'latin1');
    await expect(decode(name)).rejects.toThrow(message);
  });

  it.each([
    ['half.wav', '-c:a', 'pcm_s16le'],
    ['half.flac'],
    ['half.mp3', '-b:a', '128k'],
    ['half.ogg', '-c:a', 'libvorbis'],
    ['half.opus', '-c:a', 'libopus'],
    ['half.webm', '-c:a', 'libopus'],
    ['half.mp4', '-c:a', 'libopus'],
    ['half.m4a', '-c:a', 'aac'],
  ])('[CL25] says that %s breaks off', async (name, ...args) => {
    ffmpeg('-i', inFolder('source.wav'), ...args, inFolder(`whole-${name}`));
    const bytes = readFileSync(inFolder(`whole-${name}`));
    writeFileSync(inFolder(name), bytes.subarray(0, bytes.length / 2));
    await expect(decode(name)).rejects.toThrow(/the file breaks off: found .*; was it copied whole\?$/);
  });
});
