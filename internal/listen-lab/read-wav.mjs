/** Reads the recordings that takes.py writes. */
import { readFileSync } from 'node:fs';

/** Samples of a mono 16-bit WAV file as ffmpeg writes it, from −1 to 1. */
export function readWav(file) {
  const bytes = readFileSync(file);
  let at = 12;
  while (bytes.toString('latin1', at, at + 4) !== 'data') at += 8 + bytes.readUInt32LE(at + 4);
  const count = Math.min(bytes.readUInt32LE(at + 4), bytes.length - at - 8) >> 1;
  return Float32Array.from({ length: count }, (_, i) => bytes.readInt16LE(at + 8 + 2 * i) / 32_768);
}
