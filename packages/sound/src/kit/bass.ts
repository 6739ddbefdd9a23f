/**
 * The bass drum: an 18-inch drum with both heads on and nothing inside, from a feathered to a full stroke.
 *
 * A felt beater touches for long, longer still when the heel stays down, so that a feathered stroke is hardly
 * more than the two lowest modes.
 * Source: modes of a double-headed bass drum, Sound on Sound, January 2002 (two lowest about an octave apart).
 */

import { seededRandom } from '@shedbook/core';
import { dbToGain, highPass, lowPass } from '@shedbook/signal';
import { addBurst } from '../synth/noise.ts';
import { trimSilence } from './cymbal.ts';
import { type Head, strikeHead } from './drum.ts';
import type { RawSound } from './sound.ts';

const HEAD: Head = {
  lowestHz: 64,
  partnerHz: 112,
  partnerDb: -7,
  highestRatio: 8,
  position: 0.12,
  wander: 0.05,
  t60Seconds: [
    [60, 0.66],
    [150, 0.5],
    [300, 0.3],
    [600, 0.16],
  ],
  breathing: 0.85,
  contact: { plainSeconds: 0.0055, exponent: 0.28 },
  glide: 0.025,
  glideSeconds: 0.05,
};

const DRIVES_DB = [-36, -30, -24, -18, -12, -6, 0, 6, 12];
const TAKES = 3;

function strike(rate: number, driveDb: number, seed: string): Float32Array {
  const out = strikeHead(HEAD, { driveDb, seconds: 1, seed }, rate);
  const filters = [highPass(180, 0.7, rate), lowPass(2600 * 10 ** (driveDb / 45), 0.7, rate)];
  const gain = dbToGain(-3 + 0.5 * driveDb);
  addBurst(out, rate, { gain, riseSeconds: 0.001, t60Seconds: 0.028, filters }, seededRandom(`${seed} felt`));
  return trimSilence(out, rate);
}

/** The felt beater on the batter head. */
export function makeBass(rate: number, seed: string): RawSound {
  const takes = (driveDb: number) =>
    Array.from({ length: TAKES }, (_, take) => strike(rate, driveDb, `${seed} bass ${take}`));
  return { layers: DRIVES_DB.map((driveDb) => ({ driveDb, takes: takes(driveDb) })), wash: [] };
}
