/** Signals and measurements that the tests share, none of them made with the code under test. */
import { Hertz } from '@shedbook/core';
import { dbToGain, hann, PowerSpectrum } from '@shedbook/signal';
import type { StereoAudio } from '../src/stereo.ts';

/** A part of a test signal: amplitude in dB of full scale for so many seconds. */
export type Part = readonly [peakDb: number, seconds: number];

/** A sine of changing amplitude, phase running on. */
export function sines(parts: readonly Part[], frequencyHz: number, rate: number): Float32Array {
  const total = parts.reduce((sum, [, seconds]) => sum + Math.round(seconds * rate), 0);
  const out = new Float32Array(total);
  let at = 0;
  for (const [peakDb, seconds] of parts) {
    const end = at + Math.round(seconds * rate);
    const gain = dbToGain(peakDb);
    for (; at < end; at += 1) out[at] = gain * Math.sin((2 * Math.PI * frequencyHz * at) / rate);
  }
  return out;
}

/** The same signal in both channels. */
export function both(samples: Float32Array, sampleRateHz: number): StereoAudio {
  return { left: samples, right: samples, sampleRateHz: Hertz(sampleRateHz) };
}

/** Magnitude of one frequency in a stretch, by correlation with a sine and cosine under a Hann window. */
export function magnitudeAt(samples: Float32Array, frequencyHz: number, rate: number): number {
  let [re, im] = [0, 0];
  for (let i = 0; i < samples.length; i += 1) {
    const window = hann(i / samples.length);
    const angle = (2 * Math.PI * frequencyHz * i) / rate;
    re += window * (samples[i] as number) * Math.cos(angle);
    im += window * (samples[i] as number) * Math.sin(angle);
  }
  return Math.hypot(re, im) / samples.length;
}

/** Flat over the first quarter of a frame, then falling to nothing in the middle: the onset stays, the end is silence. */
function onsetWindow(place: number): number {
  if (place < 0.25) return 1;
  return place < 0.5 ? 0.5 + 0.5 * Math.cos(4 * Math.PI * (place - 0.25)) : 0;
}

/** Spectral centroid of the first 8192 samples of a signal, in hertz: the mean frequency weighted by amplitude. */
export function centroidHz(samples: Float32Array, rate: number): number {
  const size = 16_384;
  const frame = new Float32Array(size);
  frame.set(samples.subarray(0, size));
  const power = new Float64Array(size / 2 + 1);
  new PowerSpectrum(size, onsetWindow).compute(frame, 0, power);
  let [weighted, total] = [0, 0];
  power.forEach((value, k) => {
    weighted += ((k * rate) / size) * Math.sqrt(value);
    total += Math.sqrt(value);
  });
  return weighted / total;
}
