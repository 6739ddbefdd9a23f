/**
 * From what on something in a take is worth a word: what listeners notice, and how much of it a student is allowed.
 *
 * Conventions: milliseconds, decibels, percent, shares from 0 to 1.
 * Sources:
 * - Displacement: A. Friberg and J. Sundberg, "Time discrimination in a monotonic, isochronous sequence", JASA
 *   98(5), 1995: 6 ms for intervals under about 240 ms, 2.5 % of the interval above.
 * - Two strokes heard as two: order threshold 22 ms at its 75 % point, near-certain above 60 ms
 *   (mazurka.org.uk/experiments); listeners of jazz trios preferred asynchronies under 19 ms (JNMR 46(4), 2017).
 * - Tempo: one interval of 1000 ms shortened by 26.5 ms, ten taps at 62.2 beside 60 a minute: 2.7 to 3.7 %
 *   (mazurka.org.uk/experiments).
 * The factors by level, and the decibels, are our choice: a beginner is told of the coarsest things only.
 */

/** How far a student is. */
export const LISTENER_LEVELS = ['beginner', 'intermediate', 'advanced'] as const;
export type ListenerLevel = (typeof LISTENER_LEVELS)[number];

/** Displacement that is just noticed: in ms at least, and as a share of the interval. */
export const DISPLACEMENT = { leastMs: 6, shareOfInterval: 0.025 } as const;

/** From this many ms on, two strokes that should be one are heard as two. */
export const APART_MS = 22;

/** Change of tempo that is just noticed, in percent. */
export const TEMPO_PERCENT = 3.3;

/** What is still let pass. */
export interface LevelLimits {
  /** Lateness of a place, in displacements that are just noticed. */
  readonly displacements: number;
  /** A voice's lateness beside the lead voice, in ms. */
  readonly togetherMs: number;
  /** Change of tempo over the take or from the tempo that was asked, in just noticed changes. */
  readonly tempi: number;
  /** A voice's level beside the lesson's, in dB. */
  readonly balanceDb: number;
  /** Spread of the levels of a voice's plain strokes, in dB. */
  readonly unevenDb: number;
  /** Share of a voice's strokes that may be left out or added. */
  readonly wrongShare: number;
}

/**
 * A voice's level told by one microphone is good to about this many dB, which no student is held to account for: they
 * are let pass on top of `balanceDb`.
 */
export const MICROPHONE_DB = 4;

/** The limits of each level, in order of strictness. */
export const LEVEL_LIMITS: Readonly<Record<ListenerLevel, LevelLimits>> = {
  beginner: {
    displacements: 5,
    togetherMs: 30,
    tempi: 3,
    balanceDb: 8,
    unevenDb: 6,
    wrongShare: 0.1,
  },
  intermediate: {
    displacements: 3.5,
    togetherMs: 22,
    tempi: 2,
    balanceDb: 6,
    unevenDb: 4.5,
    wrongShare: 0.05,
  },
  advanced: {
    displacements: 2,
    togetherMs: 11,
    tempi: 1,
    balanceDb: 4,
    unevenDb: 3,
    wrongShare: 0.02,
  },
};
