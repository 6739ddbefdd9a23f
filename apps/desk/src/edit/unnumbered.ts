/** An exercise before it has a place on the page. */
import type { Exercise } from '@shedbook/core';

/** An exercise before it has a number. */
export type Unnumbered = Omit<Exercise, 'number'>;
