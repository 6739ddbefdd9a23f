/**
 * A hit: one sounding blow, from its first sample until it has died or is choked.
 *
 * Conventions: positions in samples from the start of the rendering. Every sample of a hit is computed from its
 * position alone, or from the one before it, so that blocks of any size give the same samples.
 */
import { fallPerSample, leftAfter } from '@shedbook/signal';

/** How fast a hand or the other cymbal silences a ringing one: ringing time in seconds. */
export const CHOKE_T60_SECONDS = 0.07;

/** A blow that sounds. */
export interface Hit {
  /** First sample, from the start of the rendering. */
  readonly start: number;
  readonly length: number;
  readonly soft: Float32Array;
  /** Factor of the soft buffer's amplitude. */
  readonly softGain: number;
  /** Null where one buffer is all there is. */
  readonly hard: Float32Array | null;
  /** Factor of the hard buffer's amplitude. */
  readonly hardGain: number;
  /** Sample at which it is choked; infinite while it is not. */
  chokedAt: number;
  /** Ringing time from then on, in seconds. */
  chokeT60Seconds: number;
  /** What is left of it while it is being choked, 0…1. */
  left: number;
}

const RINGING = { chokedAt: Number.POSITIVE_INFINITY, chokeT60Seconds: CHOKE_T60_SECONDS, left: 1 };

/** A hit that mixes two buffers of one length. */
export function twoBuffers(start: number, mix: Pick<Hit, 'soft' | 'softGain' | 'hard' | 'hardGain'>): Hit {
  const { soft, softGain, hard, hardGain } = mix;
  return { start, length: soft.length, soft, softGain, hard, hardGain, ...RINGING };
}

/** A hit of one buffer. */
export function oneBuffer(start: number, samples: Float32Array, gain: number): Hit {
  return {
    start,
    length: samples.length,
    soft: samples,
    softGain: gain,
    hard: null,
    hardGain: 0,
    ...RINGING,
  };
}

/** Where a hit ends, in samples from the start of the rendering. */
export function endOf(hit: Hit, sampleRateHz: number): number {
  return Math.min(hit.start + hit.length, hit.chokedAt + 1.5 * hit.chokeT60Seconds * sampleRateHz);
}

/** A stretch of the output, and how far the hit's own samples are shifted against it. */
interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly shift: number;
}

function addTwo(out: Float32Array, hit: Hit, hard: Float32Array, { from, to, shift }: Stretch): void {
  const { soft, softGain, hardGain } = hit;
  for (let i = from; i < to; i += 1) {
    const at = i + shift;
    out[i] = (out[i] as number) + (softGain * (soft[at] as number) + hardGain * (hard[at] as number));
  }
}

function addOne(out: Float32Array, { soft, softGain }: Hit, { from, to, shift }: Stretch): void {
  for (let i = from; i < to; i += 1) out[i] = (out[i] as number) + softGain * (soft[i + shift] as number);
}

function addChoked(out: Float32Array, hit: Hit, { from, to, shift }: Stretch, rate: number): void {
  const { soft, softGain, hardGain } = hit;
  const hard = hit.hard ?? soft;
  const step = fallPerSample(hit.chokeT60Seconds, rate);
  let left = hit.left;
  for (let i = from; i < to; i += 1) {
    const at = i + shift;
    left *= step;
    out[i] = (out[i] as number) + left * (softGain * (soft[at] as number) + hardGain * (hard[at] as number));
  }
  hit.left = left;
}

/** Adds what sounds of a hit in `frames` samples from `position` on. */
export function addHit(out: Float32Array, hit: Hit, position: number, frames: number, rate: number): void {
  const from = Math.max(0, hit.start - position) | 0;
  const to = Math.min(frames, Math.floor(endOf(hit, rate)) - position) | 0;
  const free = Math.max(from, Math.min(to, hit.chokedAt - position)) | 0;
  const shift = (position - hit.start) | 0;
  if (hit.hard) addTwo(out, hit, hit.hard, { from, to: free, shift });
  else addOne(out, hit, { from, to: free, shift });
  if (free < to) addChoked(out, hit, { from: free, to, shift }, rate);
}

/** Chokes a hit from a sample on, unless it is choked earlier already. */
export function chokeHit(hit: Hit, at: number, t60Seconds: number, rate: number): void {
  if (hit.chokedAt <= at) return;
  hit.chokedAt = at;
  hit.chokeT60Seconds = t60Seconds;
  hit.left = leftAfter(Math.max(0, hit.start - at), t60Seconds * rate);
}
