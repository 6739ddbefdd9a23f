/**
 * What "clean" asks of a student, by level.
 *
 * Conventions: milliseconds, decibels, shares of the written strokes (0 to 1).
 * Sources: Friberg & Sundberg 1995 for the just noticeable displacement (in `judge/tolerance.ts`); order threshold
 * of two near-simultaneous events 22 ms, near-certain above 60 ms (mazurka.org.uk/experiments): two strokes that
 * are each within half of that of the pulse cannot be heard apart. The factors and shares are our choice: a
 * single stroke just out of what anyone could notice is nobody's stumble, and a beginner is allowed more.
 */

/** How far a student is. */
export const STUDENT_LEVELS = ['first steps', 'growing', 'fluent'] as const;
export type StudentLevel = (typeof STUDENT_LEVELS)[number];

/** What is still clean. */
export interface CleanRule {
  /** Lateness allowed, in just noticeable displacements. */
  readonly displacements: number;
  /** Lateness allowed where two limbs strike together, in milliseconds. */
  readonly togetherMs: number;
  /** Share of strokes that may be early or late. */
  readonly looseShare: number;
  /** Share of strokes that may be missed or added. */
  readonly wrongShare: number;
  /** Share of strokes missed, added, early or late from which the loop is a stumble. */
  readonly stumbleShare: number;
  /** A voice's median level may differ from the written one by this much, in dB. */
  readonly balanceDb: number;
  /** Tempo may differ from the one asked by this much, in percent. */
  readonly tempoPercent: number;
}

/** The rule of each level, in order of strictness. */
export const CLEAN_RULES: Readonly<Record<StudentLevel, CleanRule>> = {
  'first steps': {
    displacements: 5,
    togetherMs: 30,
    looseShare: 0.15,
    wrongShare: 0.05,
    stumbleShare: 0.3,
    balanceDb: 8,
    tempoPercent: 10,
  },
  growing: {
    displacements: 3.5,
    togetherMs: 22,
    looseShare: 0.1,
    wrongShare: 0.025,
    stumbleShare: 0.25,
    balanceDb: 6,
    tempoPercent: 6.6,
  },
  fluent: {
    displacements: 2,
    togetherMs: 11,
    looseShare: 0.05,
    wrongShare: 0,
    stumbleShare: 0.2,
    balanceDb: 4,
    tempoPercent: 3.3,
  },
};
