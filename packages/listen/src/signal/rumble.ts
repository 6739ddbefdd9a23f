/**
 * Takes out what lies under the drums: traffic, a hand on the phone, and the pressure that a small room piles up.
 *
 * Such rumble is not heard but would be the loudest thing in a patch, whose levels count from its loudest moment.
 *
 * Conventions: samples at ANALYSIS_RATE.
 */
import { highPass, RunningFilter } from '@shedbook/signal';
import { ANALYSIS_RATE } from './bands.data.ts';

/** Where the level is down by 3 dB, in Hz: an octave under the lowest bass drums. */
const CORNER_HZ = 25;

/** A second-order Butterworth high-pass under the drums. */
export class RumbleFilter extends RunningFilter {
  constructor() {
    super(highPass(CORNER_HZ, Math.SQRT1_2, ANALYSIS_RATE));
  }
}
