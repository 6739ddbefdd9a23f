/**
 * Toms: 12 and 13 inches mounted, 14 inches on the floor, tuned high and open as in a jazz set, and a second one of 16
 * inches beside it.
 *
 * Sources of the numbers: Bessel ratios for the modes; pitches are common practice, as are ringing times.
 */

import { seededRandom } from '@shedbook/core';
import { dbToGain, highPass, lowPass } from '@shedbook/signal';
import { addBurst } from '../synth/noise.ts';
import { trimSilence } from './cymbal.ts';
import { type Head, strikeHead } from './drum.ts';
import type { RawSound } from './sound.ts';

function tom(lowestHz: number, plainSeconds: number): Head {
  return {
    lowestHz,
    partnerHz: lowestHz * 1.78,
    partnerDb: -14,
    highestRatio: 9,
    position: 0.32,
    wander: 0.08,
    t60Seconds: [
      [80, 1.9],
      [200, 1.5],
      [400, 0.8],
      [800, 0.32],
      [1600, 0.14],
    ],
    breathing: 0.6,
    contact: { plainSeconds, exponent: 0.25 },
    glide: 0.02,
    glideSeconds: 0.06,
  };
}

/** The heads of the toms. */
export const TOM_HEADS: Readonly<Record<'tom-high' | 'tom-mid' | 'tom-low' | 'tom-floor', Head>> = {
  'tom-high': tom(158, 0.0022),
  'tom-mid': tom(124, 0.0025),
  'tom-low': tom(92, 0.003),
  'tom-floor': tom(72, 0.0034),
};

const DRIVES_DB = [-30, -24, -18, -12, -6, 0, 6, 12];
const TAKES = 3;

function strike(head: Head, rate: number, driveDb: number, seed: string): Float32Array {
  const out = strikeHead(head, { driveDb, seconds: 2, seed }, rate);
  const filters = [highPass(500, 0.7, rate), lowPass(6500 * 10 ** (driveDb / 50), 0.6, rate)];
  const gain = dbToGain(-2 + 0.35 * driveDb);
  addBurst(out, rate, { gain, riseSeconds: 0.0003, t60Seconds: 0.02, filters }, seededRandom(`${seed} tip`));
  return trimSilence(out, rate);
}

/** The tip of the stick on a tom. */
export function makeTom(name: keyof typeof TOM_HEADS, rate: number, seed: string): RawSound {
  const takes = (driveDb: number) =>
    Array.from({ length: TAKES }, (_, take) =>
      strike(TOM_HEADS[name], rate, driveDb, `${seed} ${name} ${take}`),
    );
  return { layers: DRIVES_DB.map((driveDb) => ({ driveDb, takes: takes(driveDb) })), wash: [] };
}
