/**
 * Sound files as blocks of mono samples: WAV in our own code, everything else through an installed FFmpeg.
 *
 * Conventions: samples from −1 to 1, channels averaged; a file is read in blocks, so its length does not matter.
 * Source: Microsoft and IBM, Multimedia Programming Interface and Data Specifications 1.0 (RIFF WAVE).
 */
import { spawn } from 'node:child_process';
import { type FileHandle, open } from 'node:fs/promises';
import { InputError } from '../input-error.ts';
import { reasonOf } from '../lesson-file.ts';

/** A file that is being decoded. */
export interface DecodedSound {
  readonly sampleRateHz: number;
  readonly blocks: AsyncIterable<Float32Array>;
}

const BLOCK_FRAMES = 16_384;
const FFMPEG_RATE_HZ = 44_100;
const HEADER_BYTES = 65_536;

interface WavLayout {
  readonly format: number;
  readonly channels: number;
  readonly sampleRateHz: number;
  readonly bits: number;
  readonly dataStart: number;
  readonly dataBytes: number;
}

/** The layout of a WAV file from its first bytes, or null when it is none or has no sound in them. */
function wavLayout(head: Buffer): WavLayout | null {
  if (head.toString('latin1', 0, 4) !== 'RIFF' || head.toString('latin1', 8, 12) !== 'WAVE') return null;
  let fmt: Omit<WavLayout, 'dataStart' | 'dataBytes'> | null = null;
  for (let at = 12; at + 8 <= head.length; ) {
    const id = head.toString('latin1', at, at + 4);
    const size = head.readUInt32LE(at + 4);
    if (id === 'fmt ' && at + 24 <= head.length) {
      const tag = head.readUInt16LE(at + 8);
      const format = tag === 0xfffe && size >= 26 ? head.readUInt16LE(at + 32) : tag;
      const [channels, bits] = [head.readUInt16LE(at + 10), head.readUInt16LE(at + 22)];
      fmt = { format, channels, sampleRateHz: head.readUInt32LE(at + 12), bits };
    }
    if (id === 'data') return fmt && { ...fmt, dataStart: at + 8, dataBytes: size };
    at += 8 + size + (size % 2);
  }
  return null;
}

/** Reads one sample of a layout, or null when the layout is not one that is read. */
function sampleReader({ format, bits }: WavLayout): ((bytes: Buffer, at: number) => number) | null {
  if (format === 1 && [16, 24, 32].includes(bits)) {
    return (bytes, at) => bytes.readIntLE(at, bits / 8) / 2 ** (bits - 1);
  }
  if (format === 3 && bits === 32) return (bytes, at) => bytes.readFloatLE(at);
  if (format === 3 && bits === 64) return (bytes, at) => bytes.readDoubleLE(at);
  return null;
}

type Read = (bytes: Buffer, at: number) => number;

async function* wavBlocks(file: FileHandle, layout: WavLayout, read: Read): AsyncGenerator<Float32Array> {
  const width = layout.bits / 8;
  const frame = width * layout.channels;
  const buffer = Buffer.alloc(frame * BLOCK_FRAMES);
  try {
    for (let done = 0; done < layout.dataBytes; ) {
      const wanted = Math.min(buffer.length, layout.dataBytes - done);
      const { bytesRead } = await file.read(buffer, 0, wanted, layout.dataStart + done);
      const frames = Math.floor(bytesRead / frame);
      if (frames === 0) return;
      const block = new Float32Array(frames);
      for (let i = 0; i < frames; i += 1) {
        let sum = 0;
        for (let channel = 0; channel < layout.channels; channel += 1) {
          sum += read(buffer, i * frame + channel * width);
        }
        block[i] = sum / layout.channels;
      }
      yield block;
      done += frames * frame;
    }
  } finally {
    await file.close();
  }
}

async function* ffmpegBlocks(path: string): AsyncGenerator<Float32Array> {
  const args = ['-v', 'error', '-i', path, '-vn', '-f', 'f32le', '-ac', '1', '-ar', `${FFMPEG_RATE_HZ}`, '-'];
  const child = spawn('ffmpeg', args, { stdio: ['ignore', 'pipe', 'pipe'] });
  const ended = new Promise<number | Error>((resolve) => {
    child.once('error', resolve);
    child.once('close', (status) => resolve(status ?? 1));
  });
  let complaint = '';
  child.stderr.on('data', (chunk: Buffer) => {
    complaint += chunk.toString();
  });
  let rest = Buffer.alloc(0);
  for await (const chunk of child.stdout) {
    const bytes = Buffer.concat([rest, chunk as Buffer]);
    const whole = bytes.length - (bytes.length % 4);
    const block = new Float32Array(whole / 4);
    for (let i = 0; i < block.length; i += 1) block[i] = bytes.readFloatLE(4 * i);
    rest = bytes.subarray(whole);
    yield block;
  }
  const outcome = await ended;
  if (outcome === 0) return;
  if (typeof outcome !== 'number') throw new InputError(`${path}: only WAV can be read here; ${CONVERT}`);
  const why = complaint.trim().split('\n').at(-1) ?? '';
  throw new InputError(`${path}: found ${why}, expected a recording such as take.wav or take.m4a`);
}

const CONVERT = 'install FFmpeg, or save the recording as WAV';

/**
 * Opens a recording.
 * @throws InputError when it cannot be read; a file that is no recording throws while its blocks are read.
 */
export async function decodeSound(path: string): Promise<DecodedSound> {
  const file = await open(path, 'r').catch((error: unknown) => {
    throw new InputError(`${path}: ${reasonOf(error)}; expected a recording such as take.wav`);
  });
  const head = Buffer.alloc(HEADER_BYTES);
  const { bytesRead } = await file.read(head, 0, HEADER_BYTES, 0).catch(async (error: unknown) => {
    await file.close();
    throw new InputError(`${path}: ${reasonOf(error)}; expected a recording such as take.wav`);
  });
  const layout = wavLayout(head.subarray(0, bytesRead));
  const read = layout && sampleReader(layout);
  if (layout && read) return { sampleRateHz: layout.sampleRateHz, blocks: wavBlocks(file, layout, read) };
  await file.close();
  return { sampleRateHz: FFMPEG_RATE_HZ, blocks: ffmpegBlocks(path) };
}
