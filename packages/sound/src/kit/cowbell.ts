/**
 * The cowbell: the shoulder of the stick on the open edge of a clapperless bell, held by its clamp.
 *
 * Sources of the numbers: two strong partials about a fifth apart, as bells of this kind have them, and the weak ones
 * above; common practice, ringing times damped by the clamp.
 */
import { seededRandom } from '@shedbook/core';
import { dbToGain, highPass, lowPass } from '@shedbook/signal';
import { addModes } from '../synth/modes.ts';
import { addBurst } from '../synth/noise.ts';
import { trimSilence } from './cymbal.ts';
import type { RawSound } from './sound.ts';

/** Partials: pitch, level, ringing time. */
const PARTIALS: readonly (readonly [hz: number, levelDb: number, t60Seconds: number])[] = [
  [562, 0, 0.32],
  [845, -1, 0.28],
  [1490, -13, 0.16],
  [2210, -15, 0.12],
  [3260, -19, 0.08],
  [4700, -24, 0.05],
];

const DRIVES_DB = [-24, -12, 0, 12];
const TAKES = 3;

function strike(rate: number, driveDb: number, seed: string): Float32Array {
  const random = seededRandom(seed);
  const out = new Float32Array(Math.ceil(0.6 * rate));
  const [lowest = [562]] = PARTIALS;
  const modes = PARTIALS.map(([hz, levelDb, t60Seconds]) => ({
    frequencyHz: hz,
    amplitude: dbToGain(levelDb + 0.35 * driveDb * Math.log2(hz / lowest[0]) + 2 * (random.next() - 0.5)),
    phase: 2 * Math.PI * random.next(),
    t60Seconds,
  }));
  addModes(out, rate, modes);
  const filters = [highPass(1500, 0.7, rate), lowPass(7000 * 10 ** (driveDb / 60), 0.7, rate)];
  addBurst(
    out,
    rate,
    { gain: dbToGain(-8 + 0.3 * driveDb), riseSeconds: 0.0002, t60Seconds: 0.012, filters },
    random,
  );
  return trimSilence(out, rate);
}

/** The shoulder of the stick on the edge of the cowbell. */
export function makeCowbell(rate: number, seed: string): RawSound {
  const takes = (driveDb: number) =>
    Array.from({ length: TAKES }, (_, take) => strike(rate, driveDb, `${seed} cowbell ${take}`));
  return { layers: DRIVES_DB.map((driveDb) => ({ driveDb, takes: takes(driveDb) })), wash: [] };
}
