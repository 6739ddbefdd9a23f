/**
 * Wire brushes on the snare: the tap of the fan, and the sweep over the head.
 *
 * Conventions: as every sound of the kit; a sweep begins with its first whisper, not with a blow.
 * Source: many wires meet the head one after another, so a tap is longer, duller and softer than that of a tip; wires
 * drawn over a coated head make noise without a blow. The bands and times are ours.
 */
import { seededRandom } from '@shedbook/core';
import { bandPass, dbToGain, filterInPlace, highPass, lowPass } from '@shedbook/signal';
import { addBurst, whiteNoise } from '../synth/noise.ts';
import { strikeHead } from './drum.ts';
import { addWires, inLayers, SNARE_HEAD, type Strike } from './snare.ts';
import type { RawSound } from './sound.ts';

/** How long wires take to leave the head, in seconds; the tip of a stick takes a quarter of it. */
const FAN_SECONDS = 0.0042;

/** How long a sweep lasts, and how much of that it swells, in seconds. */
const SWEEP = { lasts: 0.42, swells: 0.06 } as const;

const FAN_HEAD = { ...SNARE_HEAD, contact: { ...SNARE_HEAD.contact, plainSeconds: FAN_SECONDS } };

function tap(strike: Strike): Float32Array {
  const { rate, driveDb, seed } = strike;
  const head = strikeHead(FAN_HEAD, { driveDb, seconds: 0.5, seed }, rate);
  const out = head.map((sample) => 0.5 * sample);
  addWires(out, head, strike);
  const filters = [highPass(700, 0.7, rate), lowPass(6200 * 10 ** (driveDb / 60), 0.6, rate)];
  const fan = { gain: dbToGain(1 + 0.15 * driveDb), riseSeconds: 0.0012, t60Seconds: 0.055, filters };
  addBurst(out, rate, fan, seededRandom(`${seed} fan`));
  return out;
}

/** How loud a sweep is at a moment, 0 to 1: it swells, and leaves the head at its end. */
function swell(seconds: number): number {
  if (seconds < SWEEP.swells) return Math.sin((Math.PI / 2) * (seconds / SWEEP.swells));
  const left = (SWEEP.lasts - seconds) / (SWEEP.lasts - SWEEP.swells);
  return Math.sin((Math.PI / 2) * Math.max(0, left)) ** 1.5;
}

function sweep({ rate, driveDb, seed }: Strike): Float32Array {
  const out = whiteNoise(Math.ceil(SWEEP.lasts * rate), seededRandom(`${seed} sweep`));
  filterInPlace(out, highPass(900, 0.7, rate));
  filterInPlace(out, bandPass(2600 * 10 ** (driveDb / 120), 0.45, rate));
  filterInPlace(out, lowPass(7000 * 10 ** (driveDb / 60), 0.6, rate));
  for (let i = 0; i < out.length; i += 1) out[i] = (out[i] as number) * swell(i / rate);
  return out;
}

/** The plain stroke of a brush: its fan of wires falls on the head. */
export function makeBrushTap(rate: number, seed: string): RawSound {
  return inLayers(tap, rate, `${seed} brush tap`);
}

/** A brush drawn over the head. */
export function makeSweep(rate: number, seed: string): RawSound {
  return inLayers(sweep, rate, `${seed} sweep`);
}
