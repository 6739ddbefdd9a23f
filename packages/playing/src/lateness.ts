/** How what was played is drawn beside what is written. */

/** Lateness is drawn this many times as wide as it was: 20 ms would hardly be seen. */
export const LATENESS_DRAWN = 4;
