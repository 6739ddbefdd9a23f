/**
 * Samples that an installed FFmpeg gives: a program of its own, so that what it stumbles over stays there.
 *
 * Conventions: one that says nothing for a while is ended, and so is one that nobody waits for any more.
 */
import { spawn } from 'node:child_process';

const FLOAT_BYTES = 4;

/** Milliseconds that FFmpeg may be silent: it says something of a sound film many times a second. */
const SILENT_MS = 60_000;

/** Bytes that FFmpeg takes for one thing at most. */
const MOST_BYTES = 2 ** 28;

/** Why FFmpeg gave no samples, or not all: it is not there, it took too long, or what it complained of. */
export class FfmpegFault extends Error {
  override readonly name = 'FfmpegFault';
  readonly why: 'missing' | 'too-long' | { readonly said: string };

  /** @param why what was amiss */
  constructor(why: FfmpegFault['why']) {
    super(typeof why === 'string' ? why : why.said);
    this.why = why;
  }
}

/** What FFmpeg is asked for. */
export interface FfmpegOrder {
  readonly path: string;
  readonly sampleRateHz: number;
  /** Options for what is read: which stream, which filters. */
  readonly of: readonly string[];
  readonly signal?: AbortSignal;
}

/** The last line of what FFmpeg complained about. */
function lastLine(complaint: string, path: string): string {
  return complaint.trim().split('\n').at(-1)?.replace(`${path}: `, '') ?? '';
}

function start({ path, sampleRateHz, of, signal }: FfmpegOrder) {
  const quiet = ['-v', 'error', '-nostdin', '-max_alloc', `${MOST_BYTES}`];
  const form = ['-f', 'f32le', '-ac', '1', '-ar', `${sampleRateHz}`, '-'];
  return spawn('ffmpeg', [...quiet, '-i', path, ...of, ...form], {
    stdio: ['ignore', 'pipe', 'pipe'],
    killSignal: 'SIGKILL',
    ...(signal && { signal }),
  });
}

/** Blocks of mono samples. @throws FfmpegFault where there is none, or the recording cannot be read */
export async function* ffmpegSamples(order: FfmpegOrder): AsyncGenerator<Float32Array> {
  const child = start(order);
  const ended = new Promise<number | null>((resolve) => {
    child.once('error', () => resolve(null));
    child.once('close', (status) => resolve(status ?? 1));
  });
  let complaint = '';
  child.stderr.on('data', (chunk: Buffer) => {
    complaint = `${complaint}${chunk}`.slice(-2000);
  });
  let isSilent = false;
  const silence = setTimeout(() => {
    isSilent = true;
    child.kill('SIGKILL');
  }, SILENT_MS);
  try {
    let rest = Buffer.alloc(0);
    for await (const chunk of child.stdout) {
      silence.refresh();
      const bytes = Buffer.concat([rest, chunk as Buffer]);
      const whole = bytes.length - (bytes.length % FLOAT_BYTES);
      yield new Float32Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + whole));
      rest = bytes.subarray(whole);
    }
    const status = await ended;
    order.signal?.throwIfAborted();
    if (isSilent) throw new FfmpegFault('too-long');
    if (status === null) throw new FfmpegFault('missing');
    if (status !== 0) throw new FfmpegFault({ said: lastLine(complaint, order.path) });
  } finally {
    clearTimeout(silence);
    child.kill('SIGKILL');
  }
}
