/**
 * A buzz: one stroke pressed into the head, which bounces closer and closer until it dies.
 *
 * Conventions: bounces fall at intervals that shrink by a constant factor, each softer than the one before.
 * Source: a ball that keeps the same part of its speed at each bounce falls at intervals in geometric progression.
 */

import { seededRandom } from '@shedbook/core';
import { dbToGain } from '@shedbook/signal';
import type { Layer, RawSound } from './sound.ts';

const BOUNCES = 9;
const FIRST_INTERVAL_SECONDS = 0.034;
const SHRINK = 0.86;
const FALL_DB = 3;

function bounce(layer: Layer, take: number, rate: number, seed: string): Float32Array {
  const random = seededRandom(`${seed} ${layer.driveDb > 0} ${take}`);
  const first = layer.takes[take] as Float32Array;
  const out = new Float32Array(first.length + Math.ceil(0.3 * rate));
  let at = 0;
  let interval = FIRST_INTERVAL_SECONDS * (0.9 + 0.2 * random.next());
  for (let i = 0; i < BOUNCES; i += 1) {
    const from = layer.takes[(take + i) % layer.takes.length] as Float32Array;
    const gain = dbToGain(-FALL_DB * i + 2 * (random.next() - 0.5));
    const start = Math.round(at * rate);
    for (let j = 0; j < from.length && start + j < out.length; j += 1) {
      out[start + j] = (out[start + j] as number) + gain * (from[j] as number);
    }
    at += interval;
    interval *= SHRINK;
  }
  return out;
}

/** A buzz made of the strokes of another sound. */
export function makeBuzz(of: RawSound, rate: number, seed: string): RawSound {
  const takes = (layer: Layer) => layer.takes.map((_, take) => bounce(layer, take, rate, `${seed} buzz`));
  return { layers: of.layers.map((layer) => ({ driveDb: layer.driveDb, takes: takes(layer) })), wash: [] };
}
