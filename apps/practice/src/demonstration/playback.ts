/**
 * The sound of a demonstration: read, slowed down and played.
 *
 * Conventions: seconds of the recording as it was played.
 */
import { Hertz } from '@shedbook/core';
import type { PackDemonstration } from '@shedbook/pack';
import { clocksOf } from '@shedbook/stand';
import { fetchKept } from '../page/fetch-kept.ts';
import type { SlowRequest } from './slow.worker.ts';

/** From the order to play to the first sound. */
const START_SECONDS = 0.05;

function slowed(request: SlowRequest): Promise<Float32Array<ArrayBuffer>> {
  const worker = new Worker(new URL('./slow.worker.ts', import.meta.url), { type: 'module' });
  return new Promise((resolve, reject) => {
    worker.onerror = () => reject(new Error('Internal error: the recording could not be slowed down'));
    worker.onmessage = ({ data }: MessageEvent<Float32Array<ArrayBuffer>>) => resolve(data);
    worker.postMessage(request, { transfer: [request.samples.buffer] });
  });
}

/** The recording at a speed, of the same pitch. @throws Error where it cannot be had or read */
export async function readDemonstration(
  context: BaseAudioContext,
  { path, onsets }: Pick<PackDemonstration, 'path' | 'onsets'>,
  speed: number,
): Promise<AudioBuffer> {
  const response = await fetchKept(path);
  if (!response.ok) throw new Error(`${path}: ${response.status}`);
  const decoded = await context.decodeAudioData(await response.arrayBuffer());
  if (speed === 1) return decoded;
  const { sampleRate } = decoded;
  const samples = new Float32Array(decoded.getChannelData(0));
  const slow = await slowed({ samples, rateHz: Hertz(sampleRate), speed, onsets });
  const buffer = new AudioBuffer({ length: Math.max(1, slow.length), sampleRate });
  buffer.copyToChannel(slow, 0);
  return buffer;
}

/** A recording that plays. */
export interface Playback {
  /** What leaves the loudspeaker now; null before its first sound. */
  heardSeconds(): number | null;
  stop(): void;
}

/** Plays a recording from its beginning. @param onEnd called when it has come to its end by itself */
export function playFrom(
  context: AudioContext,
  { buffer, speed }: { readonly buffer: AudioBuffer; readonly speed: number },
  onEnd: () => void,
): Playback {
  const source = new AudioBufferSourceNode(context, { buffer });
  source.connect(context.destination);
  const startedAt = context.currentTime + START_SECONDS;
  source.start(startedAt);
  source.onended = onEnd;
  return {
    heardSeconds: () => {
      const now = performance.now();
      const { contextSeconds, pageMs } = clocksOf(context, now);
      const seconds = contextSeconds + (now - pageMs) / 1000 - startedAt;
      return seconds < 0 ? null : seconds * speed;
    },
    stop: () => {
      source.onended = null;
      source.stop();
    },
  };
}
