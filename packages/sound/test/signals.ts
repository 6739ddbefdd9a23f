/** Signals and measurements that the tests share, none of them made with the code under test. */
import type { StereoAudio } from '../src/render/stereo.ts';

/** A part of a test signal: amplitude in dB of full scale for so many seconds. */
export type Part = readonly [peakDb: number, seconds: number];

/** A sine of changing amplitude, phase running on. */
export function sines(parts: readonly Part[], frequencyHz: number, rate: number): Float32Array {
  const total = parts.reduce((sum, [, seconds]) => sum + Math.round(seconds * rate), 0);
  const out = new Float32Array(total);
  let at = 0;
  for (const [peakDb, seconds] of parts) {
    const end = at + Math.round(seconds * rate);
    const gain = 10 ** (peakDb / 20);
    for (; at < end; at += 1) out[at] = gain * Math.sin((2 * Math.PI * frequencyHz * at) / rate);
  }
  return out;
}

/** The same signal in both channels. */
export function both(samples: Float32Array, sampleRateHz: number): StereoAudio {
  return { left: samples, right: samples, sampleRateHz };
}

/** Magnitude of one frequency in a stretch, by correlation with a sine and cosine under a Hann window. */
export function magnitudeAt(samples: Float32Array, frequencyHz: number, rate: number): number {
  let [re, im] = [0, 0];
  for (let i = 0; i < samples.length; i += 1) {
    const window = 0.5 - 0.5 * Math.cos((2 * Math.PI * i) / samples.length);
    const angle = (2 * Math.PI * frequencyHz * i) / rate;
    re += window * (samples[i] as number) * Math.cos(angle);
    im += window * (samples[i] as number) * Math.sin(angle);
  }
  return Math.hypot(re, im) / samples.length;
}

/** In-place radix-2 fast Fourier transform. */
export function fft(re: Float64Array, im: Float64Array): void {
  const n = re.length;
  for (let i = 1, j = 0; i < n; i += 1) {
    let bit = n >> 1;
    for (; j & bit; bit >>= 1) j ^= bit;
    j |= bit;
    if (i < j) {
      [re[i], re[j]] = [re[j] as number, re[i] as number];
      [im[i], im[j]] = [im[j] as number, im[i] as number];
    }
  }
  for (let size = 2; size <= n; size *= 2) {
    for (let k = 0; k < size / 2; k += 1) {
      const angle = (-2 * Math.PI * k) / size;
      const [wr, wi] = [Math.cos(angle), Math.sin(angle)];
      for (let from = k; from < n; from += size) {
        const to = from + size / 2;
        const xr = (re[to] as number) * wr - (im[to] as number) * wi;
        const xi = (re[to] as number) * wi + (im[to] as number) * wr;
        re[to] = (re[from] as number) - xr;
        im[to] = (im[from] as number) - xi;
        re[from] = (re[from] as number) + xr;
        im[from] = (im[from] as number) + xi;
      }
    }
  }
}

/** Power spectrum of the start of a signal, Hann-windowed over its second half so that the onset stays. */
export function powerSpectrum(samples: Float32Array, size: number): Float64Array {
  const re = new Float64Array(size);
  const im = new Float64Array(size);
  for (let i = 0; i < Math.min(size, samples.length); i += 1) {
    const fade = i < size / 2 ? 1 : 0.5 + 0.5 * Math.cos((Math.PI * (i - size / 2)) / (size / 2));
    re[i] = (samples[i] as number) * fade;
  }
  fft(re, im);
  return Float64Array.from({ length: size / 2 }, (_, k) => (re[k] as number) ** 2 + (im[k] as number) ** 2);
}

/** Spectral centroid of the start of a signal, in hertz: the mean frequency weighted by amplitude. */
export function centroidHz(samples: Float32Array, rate: number, size = 8192): number {
  const power = powerSpectrum(samples, size);
  let [weighted, total] = [0, 0];
  power.forEach((value, k) => {
    weighted += ((k * rate) / size) * Math.sqrt(value);
    total += Math.sqrt(value);
  });
  return weighted / total;
}
