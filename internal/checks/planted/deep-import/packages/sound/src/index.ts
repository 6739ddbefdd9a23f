import { twoThirds } from '@shedbook/core/dist/rhythm/fraction.js';

/** How loud, dB. */
export const loudnessDb = twoThirds().numerator;
