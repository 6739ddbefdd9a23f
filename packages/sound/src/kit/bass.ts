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

/** How a beater meets the head. */
interface Beating {
  readonly head: Head;
  /** Level of the felt's own noise for a plain stroke, in dB, and how bright it is, in hertz. */
  readonly felt: { readonly levelDb: number; readonly highHz: number };
}

const HEEL_UP: Beating = { head: HEAD, felt: { levelDb: -3, highHz: 2600 } };

/** The foot alone swings the beater: slower, so that it rests longer on the head, with hardly a click. */
const HEEL_DOWN: Beating = {
  head: { ...HEAD, contact: { ...HEAD.contact, plainSeconds: 0.0085 }, glide: 0.012 },
  felt: { levelDb: -11, highHz: 1700 },
};

function strike({ head, felt }: Beating, rate: number, driveDb: number, seed: string): Float32Array {
  const out = strikeHead(head, { driveDb, seconds: 1, seed }, rate);
  const filters = [highPass(180, 0.7, rate), lowPass(felt.highHz * 10 ** (driveDb / 45), 0.7, rate)];
  const gain = dbToGain(felt.levelDb + 0.5 * driveDb);
  addBurst(out, rate, { gain, riseSeconds: 0.001, t60Seconds: 0.028, filters }, seededRandom(`${seed} felt`));
  return trimSilence(out, rate);
}

function inLayers(of: Beating, rate: number, seed: string): RawSound {
  const takes = (driveDb: number) =>
    Array.from({ length: TAKES }, (_, take) => strike(of, rate, driveDb, `${seed} bass ${take}`));
  return { layers: DRIVES_DB.map((driveDb) => ({ driveDb, takes: takes(driveDb) })), wash: [] };
}

/** The felt beater on the batter head, with the weight of the leg. */
export function makeBass(rate: number, seed: string): RawSound {
  return inLayers(HEEL_UP, rate, seed);
}

/** The same with the heel on the pedal. */
export function makeBassHeelDown(rate: number, seed: string): RawSound {
  return inLayers(HEEL_DOWN, rate, `${seed} heel down`);
}
