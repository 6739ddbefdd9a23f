/**
 * From a plate and a stick to the layers of a sound.
 *
 * Conventions: drives in dB; a stick's click is noise that lasts as long as the tip bounces on the metal.
 */

import { seededRandom } from '@shedbook/core';
import { dbToGain, highPass, lowPass } from '@shedbook/signal';
import { addBurst, fadeEnd } from '../synth/noise.ts';
import { addPlateStroke, type Plate, ringPlate } from '../synth/plate.ts';
import type { Layer, RawSound } from './sound.ts';

/** The noise of the blow itself. */
export interface Click {
  /** Relative to the plate, in dB. */
  readonly levelDb: number;
  readonly t60Seconds: number;
  readonly riseSeconds: number;
  readonly lowHz: number;
  /** Upper edge for a plain stroke; softer strokes are duller. */
  readonly highHz: number;
}

/** A cymbal and the way it is struck. */
export interface CymbalVoicing {
  readonly plate: Plate;
  readonly click: Click;
  readonly drivesDb: readonly number[];
  readonly takes: number;
  readonly seconds: number;
  /** Contact time constant for a plain stroke. */
  readonly contactSeconds: number;
  /** Damping of a plain stroke as a ringing time; infinite for none. */
  readonly dampedT60Seconds: number;
  /** Ringing time at which a very soft stroke (−24 dB) is damped. */
  readonly softT60Seconds: number;
}

/** Damping adds as rates; it grows as the stroke gets softer. */
function damping(voicing: CymbalVoicing, driveDb: number): number {
  const softness = Math.min(1.5, Math.max(0, -driveDb / 24));
  return 1 / (1 / voicing.dampedT60Seconds + softness / voicing.softT60Seconds);
}

function addClick(out: Float32Array, rate: number, click: Click, driveDb: number, seed: string): void {
  const filters = [highPass(click.lowHz, 0.7, rate), lowPass(click.highHz * 10 ** (driveDb / 60), 0.7, rate)];
  const burst = { gain: dbToGain(click.levelDb), riseSeconds: click.riseSeconds, filters };
  addBurst(out, rate, { ...burst, t60Seconds: click.t60Seconds * 10 ** (driveDb / 120) }, seededRandom(seed));
}

/** The layers of a cymbal sound. */
export function makeCymbal(voicing: CymbalVoicing, rate: number, seed: string): RawSound {
  const plate = { ...voicing.plate, seed: `${seed} ${voicing.plate.seed}` };
  const rung = Array.from({ length: voicing.takes }, (_, take) =>
    ringPlate(plate, take, rate, voicing.seconds),
  );
  const layers: Layer[] = voicing.drivesDb.map((driveDb) => ({
    driveDb,
    takes: rung.map((bands, take) => {
      const out = new Float32Array(Math.ceil(voicing.seconds * rate));
      const contactSeconds = voicing.contactSeconds * 10 ** (-driveDb / 60);
      const dampedT60Seconds = damping(voicing, driveDb);
      addPlateStroke(out, rate, plate, bands, { driveDb, contactSeconds, dampedT60Seconds });
      addClick(out, rate, voicing.click, driveDb, `${plate.seed} click ${take}`);
      return trimSilence(out, rate);
    }),
  }));
  return { layers, wash: [] };
}

/** How far under its peak a sound is taken to have ended, in dB. */
const INAUDIBLE_DB = -70;

/** A buffer cut where the rest stays far under its peak (70 dB unless told), ending in a short fade. */
export function trimSilence(buffer: Float32Array, rate: number, underDb = INAUDIBLE_DB): Float32Array {
  let peak = 0;
  for (const sample of buffer) peak = Math.max(peak, Math.abs(sample));
  const least = peak * dbToGain(underDb);
  let end = buffer.length;
  while (end > 1 && Math.abs(buffer[end - 1] as number) < least) end -= 1;
  const trimmed = buffer.slice(0, end);
  fadeEnd(trimmed, rate, Math.min(0.2, (0.1 * end) / rate));
  return trimmed;
}
