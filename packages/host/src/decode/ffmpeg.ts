/** What no decoder here reads, AAC above all, through an installed FFmpeg. */

import { spawn } from 'node:child_process';
import { Hertz } from '@shedbook/core';
import { InputError } from '../input-error.ts';
import { cannotRead, type DecodedSound, type FoundSound } from './decoded-sound.ts';

const RATE_HZ = 44_100;
const FLOAT_BYTES = 4;

async function* ffmpegBlocks(path: string, what: FoundSound): AsyncGenerator<Float32Array> {
  const args = ['-v', 'error', '-i', path, '-vn', '-f', 'f32le', '-ac', '1', '-ar', `${RATE_HZ}`, '-'];
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
    const block = new Float32Array(Math.floor(bytes.length / FLOAT_BYTES));
    for (let i = 0; i < block.length; i += 1) block[i] = bytes.readFloatLE(FLOAT_BYTES * i);
    rest = bytes.subarray(block.length * FLOAT_BYTES);
    yield block;
  }
  const outcome = await ended;
  if (outcome === 0) return;
  if (typeof outcome !== 'number') {
    throw new InputError(({ words }) => words.notDecoded({ file: path, found: what(words.sounds) }));
  }
  const why = complaint.trim().split('\n').at(-1)?.replace(`${path}: `, '') ?? `${outcome}`;
  throw cannotRead(path, (sounds) => sounds.complaint({ kind: what(sounds), why }));
}

/** Opens a file with FFmpeg; `what` names what it seems to be. What it cannot read throws while blocks are read. */
export function openWithFfmpeg(path: string, what: FoundSound): DecodedSound {
  return { sampleRateHz: Hertz(RATE_HZ), blocks: ffmpegBlocks(path, what) };
}
