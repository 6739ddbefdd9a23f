/**
 * K-weighting: the filter that makes a level of power agree with loudness.
 *
 * Conventions: two second-order filters in series at any sample rate; power is mean square of full scale.
 * Sources: ITU-R BS.1770-4 Annex 1: tables 1 and 2 are the filters at 48 kHz, and those of any other rate are to have
 * the frequency response of these; the analogue parameters from which libebur128 (MIT) derives other rates.
 * Differs from the source: like libebur128 the derivation leaves the numerator of the high-pass as it is at 48 kHz, so
 * the whole is louder by 0.004 dB at 44.1 kHz and softer by 0.02 dB at 96 kHz.
 */
import { type Biquad, powerResponse } from './biquad.ts';
import { dbToGain, dbToPower, powerToDb } from './decibels.ts';

const SHELF = {
  hz: 1681.974450955533,
  db: 3.999843853973347,
  q: 0.7071752369554196,
  tilt: 0.4996667741545416,
};
const HIGH_PASS = { hz: 38.13547087602444, q: 0.5003270373238773 };

function shelf(sampleRateHz: number): Biquad {
  const k = Math.tan((Math.PI * SHELF.hz) / sampleRateHz);
  const high = dbToGain(SHELF.db);
  const band = high ** SHELF.tilt;
  const a0 = 1 + k / SHELF.q + k * k;
  return {
    b0: (high + (band * k) / SHELF.q + k * k) / a0,
    b1: (2 * (k * k - high)) / a0,
    b2: (high - (band * k) / SHELF.q + k * k) / a0,
    a1: (2 * (k * k - 1)) / a0,
    a2: (1 - k / SHELF.q + k * k) / a0,
  };
}

function lowCut(sampleRateHz: number): Biquad {
  const k = Math.tan((Math.PI * HIGH_PASS.hz) / sampleRateHz);
  const a0 = 1 + k / HIGH_PASS.q + k * k;
  return { b0: 1, b1: -2, b2: 1, a1: (2 * (k * k - 1)) / a0, a2: (1 - k / HIGH_PASS.q + k * k) / a0 };
}

/** The two filters of K-weighting at a sample rate: shelf, then high-pass. */
export function kWeighting(sampleRateHz: number): readonly [Biquad, Biquad] {
  return [shelf(sampleRateHz), lowCut(sampleRateHz)];
}

/** The rate at which the standard defines the weighting. */
const STANDARD_RATE_HZ = 48_000;

/** Gain of power at a frequency, 0 to 24000 Hz: what the standard's own filters do there. */
export function kWeight(frequencyHz: number): number {
  const [shelf, highPass] = kWeighting(STANDARD_RATE_HZ);
  return (
    powerResponse(shelf, frequencyHz, STANDARD_RATE_HZ) *
    powerResponse(highPass, frequencyHz, STANDARD_RATE_HZ)
  );
}

/** A filter that goes on where it stopped: the K-weighted samples from `from` to `to`, written to `out`. */
export type KFilter = (samples: Float32Array, from: number, to: number, out: Float64Array) => void;

/** Both filters in one pass, at rest. `out` is filled from its start. */
export function createKFilter(sampleRateHz: number): KFilter {
  const [s, h] = kWeighting(sampleRateHz);
  const { b0, b1, b2, a1, a2 } = s;
  const [c1, c2] = [h.a1, h.a2];
  const state = new Float64Array(6);
  return (samples, from, to, out) => {
    let [x1, x2, y1, y2, z1, z2] = state as unknown as [number, number, number, number, number, number];
    for (let i = from; i < to; i += 1) {
      const x = samples[i] as number;
      const y = b0 * x + b1 * x1 + b2 * x2 - a1 * y1 - a2 * y2;
      const z = y - 2 * y1 + y2 - c1 * z1 - c2 * z2;
      x2 = x1;
      x1 = x;
      y2 = y1;
      y1 = y;
      z2 = z1;
      z1 = z;
      out[i - from] = z;
    }
    state.set([x1, x2, y1, y2, z1, z2]);
  };
}

/** K-weighted samples, from rest, in double precision. */
export function kWeighted(samples: Float32Array, sampleRateHz: number): Float64Array {
  const out = new Float64Array(samples.length);
  createKFilter(sampleRateHz)(samples, 0, samples.length, out);
  return out;
}

/** Loudness in LUFS of a K-weighted mean square summed over channels. */
export function powerToLufs(power: number): number {
  return -0.691 + powerToDb(power);
}

/** K-weighted mean square of a loudness in LUFS. */
export function lufsToPower(lufs: number): number {
  return dbToPower(lufs + 0.691);
}
