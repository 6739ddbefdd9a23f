/**
 * Two hands clapping: a knock of the hollow between the palms, and skin that slaps flat.
 *
 * Source of the numbers: a clap's spectrum has one broad peak, lower the more the palms are hollowed (B. Repp, The sound
 * of two hands clapping, J. Acoust. Soc. Am. 81(4), 1987, 1100–1109); how long it lasts and how it grows with force are ours.
 */

import { seededRandom } from '@shedbook/core';
import { dbToGain, highPass, lowPass } from '@shedbook/signal';
import { addModes } from '../synth/modes.ts';
import { addBurst } from '../synth/noise.ts';
import { trimSilence } from './cymbal.ts';
import type { RawSound } from './sound.ts';

/** The hollow between the palms: pitch, level, ringing time. */
const HOLLOW: readonly (readonly [hz: number, levelDb: number, t60Seconds: number])[] = [
  [760, -4, 0.045],
  [1180, 0, 0.05],
  [1900, -8, 0.03],
];

const DRIVES_DB = [-24, -12, 0, 12];
const TAKES = 4;

function strike(rate: number, driveDb: number, seed: string): Float32Array {
  const random = seededRandom(seed);
  const out = new Float32Array(Math.ceil(0.25 * rate));
  const shift = 1 + 0.06 * (random.next() - 0.5);
  const modes = HOLLOW.map(([hz, levelDb, t60Seconds]) => ({
    frequencyHz: hz * shift,
    amplitude: dbToGain(levelDb + 3 * (random.next() - 0.5)),
    phase: 2 * Math.PI * random.next(),
    t60Seconds,
  }));
  addModes(out, rate, modes);
  const filters = [highPass(650, 0.8, rate), lowPass(4500 * 10 ** (driveDb / 60), 0.7, rate)];
  addBurst(out, rate, { gain: dbToGain(6), riseSeconds: 0.0004, t60Seconds: 0.11, filters }, random);
  return trimSilence(out, rate);
}

/** One pair of hands. */
export function makeClap(rate: number, seed: string): RawSound {
  const takes = (driveDb: number) =>
    Array.from({ length: TAKES }, (_, take) => strike(rate, driveDb, `${seed} clap ${take}`));
  return { layers: DRIVES_DB.map((driveDb) => ({ driveDb, takes: takes(driveDb) })), wash: [] };
}
