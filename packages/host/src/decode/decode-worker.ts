/** The thread that decodes recordings, one after the other. */
import { parentPort } from 'node:worker_threads';
import type { DecodeAnswer, DecodeOrder } from './decode-messages.ts';
import { openSound } from './open-sound.ts';
import { SoundFault } from './sound-fault.ts';

/** Samples that are given at once, about: a second and a half of sound. */
const ABOUT_SAMPLES = 65_536;

let blocks: AsyncIterator<Float32Array> | null = null;

async function end(): Promise<void> {
  const old = blocks;
  blocks = null;
  await old?.return?.();
}

function joined(pieces: readonly Float32Array[], length: number): Float32Array {
  const block = new Float32Array(length);
  let at = 0;
  for (const piece of pieces) {
    block.set(piece, at);
    at += piece.length;
  }
  return block;
}

/** The next samples of the recording; null at its end. */
async function more(): Promise<Float32Array | null> {
  const pieces: Float32Array[] = [];
  let length = 0;
  while (blocks && length < ABOUT_SAMPLES) {
    const { value, done } = await blocks.next();
    if (done) blocks = null;
    else {
      pieces.push(value);
      length += value.length;
    }
  }
  return length === 0 && !blocks ? null : joined(pieces, length);
}

async function open(path: string, head: Uint8Array): Promise<DecodeAnswer> {
  await end();
  const opened = await openSound(path, Buffer.from(head));
  if ('forFfmpeg' in opened) return { kind: 'for-ffmpeg', ...opened };
  blocks = opened.blocks[Symbol.asyncIterator]();
  return { kind: 'opened', sampleRateHz: opened.sampleRateHz };
}

async function answer(order: DecodeOrder): Promise<DecodeAnswer> {
  if (order.want === 'open') return open(order.path, order.head);
  if (order.want === 'more') return { kind: 'samples', block: await more() };
  await end();
  return { kind: 'ended' };
}

parentPort?.on('message', (order: DecodeOrder) => {
  answer(order).then(
    (reply) => {
      const buffer = reply.kind === 'samples' ? reply.block?.buffer : undefined;
      parentPort?.postMessage(reply, buffer instanceof ArrayBuffer ? [buffer] : []);
    },
    (error: unknown) => {
      const said: DecodeAnswer =
        error instanceof SoundFault
          ? { kind: 'fault', fact: error.fact }
          : { kind: 'broken', message: error instanceof Error ? (error.stack ?? error.message) : `${error}` };
      parentPort?.postMessage(said);
    },
  );
});
