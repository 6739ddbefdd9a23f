/**
 * A limiter that looks ahead: no true peak passes the ceiling, and nothing is ever clipped.
 *
 * Conventions: amplitudes of full scale; both channels are turned down alike, so that the picture stays.
 * Source: the usual look-ahead design: the smallest gain needed within the window, released exponentially, smoothed by
 * a moving average as long as the window, so that the gain is always down before the peak comes.
 */
import type { FullScaleDb } from '@shedbook/core';
import { dbToGain, easePerSample } from '@shedbook/signal';
import type { StereoAudio } from '../stereo.ts';
import { mostOvershoot, PEAK_REACH, peakAfter, peakPhases } from './true-peak.ts';

/**
 * As short as they can be without being heard: the rest of a stroke sounds as it was struck. At 5 dB of limiting, bass
 * drum and snare of a funk keep every third of an octave from 160 Hz up within 0.5 dB; 3 and 20 ms took 1 to 3 dB.
 */
const LOOK_AHEAD_SECONDS = 0.001;
const RELEASE_SECONDS = 0.002;

const STRETCH = 64;

/** Highest amplitude of either channel in a stretch and as far around it as interpolation looks. */
function highestAround({ left, right }: StereoAudio, from: number): number {
  let highest = 0;
  const to = Math.min(left.length, from + STRETCH + PEAK_REACH);
  for (let i = Math.max(0, from - PEAK_REACH); i < to; i += 1) {
    highest = Math.max(highest, Math.abs(left[i] as number), Math.abs(right[i] as number));
  }
  return highest;
}

/** Lowers the gain of the samples before a peak, as far back as the limiter looks ahead. */
function lowerBefore(gains: Float32Array, peakAt: number, gain: number, lookAhead: number): void {
  for (let i = Math.max(0, peakAt - lookAhead); i <= peakAt && i < gains.length; i += 1) {
    if ((gains[i] as number) > gain) gains[i] = gain;
  }
}

/** The gain needed at each sample for every peak within the window ahead, or null where no peak is too high. */
function neededGains(audio: StereoAudio, ceiling: number, lookAhead: number): Float32Array | null {
  const phases = peakPhases(audio.sampleRateHz);
  const safe = ceiling / mostOvershoot(phases);
  const { left, right } = audio;
  let gains: Float32Array | null = null;
  for (let from = 0; from < left.length; from += STRETCH) {
    if (highestAround(audio, from) <= safe) continue;
    for (let i = from; i < Math.min(left.length, from + STRETCH); i += 1) {
      const peak = Math.max(peakAfter(left, i, phases), peakAfter(right, i, phases));
      if (peak <= ceiling) continue;
      gains ??= new Float32Array(left.length).fill(1);
      lowerBefore(gains, i + 1, ceiling / peak, lookAhead + 1);
    }
  }
  return gains;
}

/** Lets gains rise again slowly after each peak, in place. */
function release(gains: Float32Array, sampleRateHz: number): void {
  const rise = 1 - easePerSample(RELEASE_SECONDS, sampleRateHz);
  let gain = 1;
  for (let i = 0; i < gains.length; i += 1) {
    gain = Math.min(gains[i] as number, gain + rise * (1 - gain));
    gains[i] = gain;
  }
}

/** Each sample of a channel times the mean of the last `lookAhead + 1` gains. */
function applySmoothed(samples: Float32Array, gains: Float32Array, lookAhead: number): Float32Array {
  const out = new Float32Array(samples.length);
  const before = gains[0] as number;
  let sum = (lookAhead + 1) * before;
  for (let i = 0; i < samples.length; i += 1) {
    sum += (gains[i] as number) - (i > lookAhead ? (gains[i - lookAhead - 1] as number) : before);
    out[i] = ((samples[i] as number) * sum) / (lookAhead + 1);
  }
  return out;
}

/**
 * Sound whose true peak is at most `ceilingDbtp`.
 * @returns the sound itself where it is low enough already, otherwise a limited copy of the same length.
 */
export function limitTruePeak(audio: StereoAudio, ceilingDbtp: FullScaleDb): StereoAudio {
  const lookAhead = Math.round(LOOK_AHEAD_SECONDS * audio.sampleRateHz);
  const gains = neededGains(audio, dbToGain(ceilingDbtp), lookAhead);
  if (!gains) return audio;
  release(gains, audio.sampleRateHz);
  const left = applySmoothed(audio.left, gains, lookAhead);
  const right = applySmoothed(audio.right, gains, lookAhead);
  return { left, right, sampleRateHz: audio.sampleRateHz };
}
