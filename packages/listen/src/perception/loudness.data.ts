/**
 * What K-weighting does to a stroke of each voice, in dB: how much louder it is than its plain level says.
 *
 * A recording is measured by plain levels; lessons speak of loudness, which the sound of this program measures with
 * K-weighting (ITU-R BS.1770-4). Cymbals gain by it, the bass drum loses.
 * Source: measured over the first 100 ms of strokes of our own kit, FluidR3 GM and TimGM6mb, means rounded to half a
 * dB; the three kits differ by 1 dB, for hi-hats by 3.
 */
import type { Voice } from '@shedbook/core';

/** Loudness less plain level, in dB. */
export const LOUDER_DB: Readonly<Record<Voice, number>> = {
  ride: 4,
  hihat: 3,
  'hihat-open': 3,
  'hihat-foot': 2,
  bass: -2,
  snare: 0,
  sidestick: 2.5,
  rimshot: 0.5,
  crash: 2.5,
  'tom-high': -0.5,
  'tom-mid': -0.5,
  'tom-low': -1,
};

/** A level told by one microphone is good to about this many dB, which no student is held to account for. */
export const MICROPHONE_DB = 4;
