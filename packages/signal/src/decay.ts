/**
 * How things die away and settle, sample by sample.
 *
 * Conventions: seconds, and the rate in hertz; a factor a sample is the one from each sample to the next, under 1.
 */

/** What is left after `seconds` of what falls by 60 dB in `t60Seconds`, as an amplitude of 1. */
export function leftAfter(seconds: number, t60Seconds: number): number {
  return 10 ** ((-3 * seconds) / t60Seconds);
}

/** Factor a sample of what falls by 60 dB in `t60Seconds`: a thousandth of the amplitude is left after them. */
export function fallPerSample(t60Seconds: number, sampleRateHz: number): number {
  return leftAfter(1, t60Seconds * sampleRateHz);
}

/** Factor a sample of what falls to 1/e of itself in `timeConstantSeconds`. */
export function easePerSample(timeConstantSeconds: number, sampleRateHz: number): number {
  return Math.exp(-1 / (timeConstantSeconds * sampleRateHz));
}
