/** A recording on disk as a whole. */
import { decodeSound } from '@shedbook/host';
import type { Recording } from '@shedbook/listen';

/** Reads a recording. @throws InputError when it cannot be read */
export async function readRecording(path: string): Promise<Recording> {
  const { sampleRateHz, blocks } = await decodeSound(path);
  const pieces: Float32Array[] = [];
  for await (const block of blocks) pieces.push(block.slice());
  const samples = new Float32Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    samples.set(piece, at);
    at += piece.length;
  }
  return { samples, sampleRateHz };
}
