/**
 * Clicks for count-in and metronome: a wood block in three pitches, short and round.
 *
 * They stand out by lying between snare and cymbals in pitch, not by sharpness: few partials, a soft attack.
 */

import { seededRandom } from '@shedbook/core';
import { dbToGain, highPass, lowPass } from '@shedbook/signal';
import { addModes } from '../synth/modes.ts';
import { addBurst } from '../synth/noise.ts';
import { trimSilence } from './cymbal.ts';
import type { RawSound } from './sound.ts';

/** Pitch of each click. */
export const CLICK_HZ = { 'click-accent': 1568, 'click-beat': 1175, 'click-subdivision': 880 } as const;

/** Partials of a hollow block: ratio to the lowest, level, ringing time. */
const PARTIALS: readonly (readonly [ratio: number, levelDb: number, t60Seconds: number])[] = [
  [1, 0, 0.085],
  [1.62, -9, 0.06],
  [2.74, -14, 0.04],
  [4.1, -22, 0.025],
];

const DRIVES_DB = [-24, -12, 0, 12];

function strike(hz: number, rate: number, driveDb: number, seed: string): Float32Array {
  const random = seededRandom(seed);
  const out = new Float32Array(Math.ceil(0.2 * rate));
  const modes = PARTIALS.map(([ratio, levelDb, t60Seconds]) => ({
    frequencyHz: hz * ratio,
    amplitude: dbToGain(levelDb + 0.2 * driveDb * Math.log2(ratio) + (random.next() - 0.5)),
    phase: 0,
    t60Seconds: t60Seconds * 10 ** (driveDb / 120),
  }));
  addModes(out, rate, modes);
  const filters = [highPass(hz, 0.7, rate), lowPass(5000 * 10 ** (driveDb / 60), 0.7, rate)];
  addBurst(
    out,
    rate,
    { gain: dbToGain(-16 + 0.1 * driveDb), riseSeconds: 0.0003, t60Seconds: 0.008, filters },
    random,
  );
  return trimSilence(out, rate);
}

/** One of the three clicks. */
export function makeClick(name: keyof typeof CLICK_HZ, rate: number, seed: string): RawSound {
  const takes = (driveDb: number) =>
    [0, 1].map((take) => strike(CLICK_HZ[name], rate, driveDb, `${seed} ${name} ${take}`));
  return { layers: DRIVES_DB.map((driveDb) => ({ driveDb, takes: takes(driveDb) })), wash: [] };
}
