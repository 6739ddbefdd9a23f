/**
 * What listeners notice, and how people play.
 *
 * Conventions: milliseconds, percent.
 * Sources:
 * - Displacement: A. Friberg and J. Sundberg, "Time discrimination in a monotonic, isochronous sequence", JASA
 *   98(5), 1995: 6 ms for intervals under about 240 ms, 2.5 % of the interval above (100 to 1000 ms tested; training
 *   made no difference).
 * - Two strokes heard as two: order threshold 22 ms at its 75 % point, near-certain above 60 ms
 *   (mazurka.org.uk/experiments); listeners of jazz trios preferred asynchronies under 19 ms (JNMR 46(4), 2017).
 * - Trained hands and feet: fifteen professional drummers with a metronome were 2 ms off with the hi-hat and 10 ms early
 *   with snare and bass drum at 60 and 120 a minute, and the errors of their limbs went together (S. Fujii and others,
 *   "Synchronization error of drum kit playing with a metronome at different tempi by professional drummers", Music
 *   Perception 28(5), 2011, abstract). Three drummers of jazz trios closed the hi-hat 2 to 26 ms ahead of the pulse
 *   (JNMR 46(4), 2017, abstract).
 * - Spread: with a click, about 2 % of the interval in trained people and 4 % in others, and their taps lead it by some
 *   10 to 80 ms (B. H. Repp, "Sensorimotor synchronization: a review of the tapping literature", Psychonomic Bulletin &
 *   Review 12(6), 2005; these figures from memory).
 * - Tempo: one interval of 1000 ms shortened by 26.5 ms, ten taps at 62.2 beside 60 a minute: 2.7 to 3.7 %
 *   (mazurka.org.uk/experiments).
 */

/** Displacement of one stroke that is just noticed: in ms at least, and as a share of the interval. */
export const DISPLACEMENT = { leastMs: 6, shareOfInterval: 0.025 } as const;

/** From this many ms on, two strokes that should be one are heard as two. */
export const APART_MS = 22;

/** Change of tempo that is just noticed, in percent: the middle of what was measured. */
export const TEMPO_PERCENT = 3.3;

/** Spread of trained and of untrained people's strokes with a click, as a share of the interval. */
export const HUMAN_SPREAD = { trained: 0.02, untrained: 0.04 } as const;

/** Asynchrony in ms under which listeners of jazz trios prefer a performance. */
export const PREFERRED_APART_MS = 19;
