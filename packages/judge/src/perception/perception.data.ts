/**
 * What listeners notice.
 *
 * Conventions: milliseconds, percent.
 * Sources:
 * - Displacement: A. Friberg and J. Sundberg, "Time discrimination in a monotonic, isochronous sequence", JASA
 *   98(5), 1995: 6 ms for intervals under about 240 ms, 2.5 % of the interval above (100 to 1000 ms tested; training
 *   made no difference).
 * - Two strokes heard as two: order threshold 22 ms at its 75 % point, near-certain above 60 ms
 *   (mazurka.org.uk/experiments); listeners of jazz trios preferred asynchronies under 19 ms (JNMR 46(4), 2017).
 * - Tempo: one interval of 1000 ms shortened by 26.5 ms, ten taps at 62.2 beside 60 a minute: 2.7 to 3.7 %
 *   (mazurka.org.uk/experiments).
 */

/** Displacement of one stroke that is just noticed: in ms at least, and as a share of the interval. */
export const DISPLACEMENT = { leastMs: 6, shareOfInterval: 0.025 } as const;

/** From this many ms on, two strokes that should be one are heard as two. */
export const APART_MS = 22;

/** Change of tempo that is just noticed, in percent: the middle of what was measured. */
export const TEMPO_PERCENT = 3.3;
