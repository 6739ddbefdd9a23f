import { twoThirds } from '@shedbook/core';

/** How loud two thirds are, dB. */
export const loudnessDb = twoThirds().numerator;
