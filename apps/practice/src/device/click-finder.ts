/**
 * Finding a known click in what a microphone heard.
 *
 * Conventions: mono samples; positions in samples of the recording. A click is found by correlation with itself
 * (a matched filter), so that hiss and hum of the room matter little.
 * Source: G. L. Turin, "An introduction to matched filters", IRE Trans. Inf. Theory 6(3), 1960.
 */

/** Seconds that the click of the check lasts. */
export const CLICK_SECONDS = 0.012;

/** Frequencies at the start and the end of the click, in Hz: a short sweep has one sharp peak. */
const SWEEP_HZ = [900, 3600] as const;

/** The click of the check: a sweep under a half sine, peak 1. */
export function makeClick(rateHz: number): Float32Array {
  const length = Math.round(CLICK_SECONDS * rateHz);
  const [from, to] = SWEEP_HZ;
  return Float32Array.from({ length }, (_, i) => {
    const t = i / rateHz;
    const phase = 2 * Math.PI * (from * t + ((to - from) * t * t) / (2 * CLICK_SECONDS));
    return Math.sin(phase) * Math.sin((Math.PI * i) / length);
  });
}

/** The peak has to stand out from the rest by this factor (of the root mean square). */
const STANDS_OUT = 6;

/** Correlation of the click with the recording at one position. */
function correlationAt(samples: Float32Array, at: number, click: Float32Array): number {
  let sum = 0;
  for (let i = 0; i < click.length; i += 1) sum += (samples[at + i] as number) * (click[i] as number);
  return Math.abs(sum);
}

/** Where the click begins in a stretch of the recording, or null where it is not heard. */
export function findClick(
  samples: Float32Array,
  from: number,
  to: number,
  click: Float32Array,
): number | null {
  const first = Math.max(0, Math.round(from));
  const last = Math.min(samples.length - click.length, Math.round(to));
  let best = -1;
  let peak = 0;
  let squares = 0;
  for (let at = first; at <= last; at += 1) {
    const value = correlationAt(samples, at, click);
    squares += value * value;
    if (value > peak) {
      peak = value;
      best = at;
    }
  }
  if (best < 0) return null;
  const rms = Math.sqrt(squares / (last - first + 1));
  return peak > STANDS_OUT * rms ? best : null;
}
