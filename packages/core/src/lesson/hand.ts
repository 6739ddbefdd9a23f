/** Which hand plays a stroke, as it is written. */

/** A hand, or both. */
export type Hand = 'R' | 'L' | 'B';

/** One hand for each stroke, in order. */
export type Hands = readonly Hand[];
