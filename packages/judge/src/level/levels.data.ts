/**
 * How far a student is, and what each level still lets pass.
 *
 * Conventions: milliseconds, decibels, shares from 0 to 1; a level that allows less stands later.
 * Sources: what is just noticed and how people play stands with its sources in `perception/perception.data.ts`. The
 * spread of a limb that a level allows follows from what trained and untrained people reach; lateness where limbs meet,
 * from how far apart professionals' limbs are and what listeners prefer. How many displacements, the decibels and the
 * shares are our choice: a beginner is told of the coarsest things only.
 */

/** Levels of students, in order of strictness. */
export const LEVELS = ['beginner', 'intermediate', 'advanced'] as const;
/** How far a student is. */
export type Level = (typeof LEVELS)[number];

/** What a level still lets pass. */
export interface Allowance {
  /** Median lateness of a place, as a ratio to the displacement that is just noticed. */
  readonly displacements: number;
  /**
   * Median lateness in ms where limbs strike together: at the strictest, the asynchrony under which listeners of jazz
   * trios prefer a performance; then the one from which two strokes are heard as two, and half as much again.
   */
  readonly togetherMs: number;
  /** Spread of a limb's strokes about the student's own pulse, as a share of a beat, and never less than so many ms. */
  readonly spreadShare: number;
  readonly spreadMs: number;
  /** Change of tempo, or distance from the tempo that was asked, as a ratio to what is just noticed. */
  readonly tempi: number;
  /** A voice's median level beside the lesson's, both relative to the lead voice, in dB. */
  readonly balanceDb: number;
  /** Share of one voice's strokes that may be left out or added. */
  readonly wrongShare: number;
  /** Share of one voice's strokes left out from which it is not yet there. */
  readonly stumbleShare: number;
}

/** What each level lets pass. */
export const ALLOWANCES: Readonly<Record<Level, Allowance>> = {
  beginner: {
    displacements: 5,
    togetherMs: 33,
    spreadShare: 0.04,
    spreadMs: 28,
    tempi: 3,
    balanceDb: 8,
    wrongShare: 0.1,
    stumbleShare: 0.3,
  },
  intermediate: {
    displacements: 3.5,
    togetherMs: 25,
    spreadShare: 0.03,
    spreadMs: 20,
    tempi: 2,
    balanceDb: 6,
    wrongShare: 0.04,
    stumbleShare: 0.25,
  },
  advanced: {
    displacements: 2.5,
    togetherMs: 19,
    spreadShare: 0.02,
    spreadMs: 14,
    tempi: 1,
    balanceDb: 4,
    wrongShare: 0,
    stumbleShare: 0.2,
  },
};

/** What the levels were called by the practice page before there was one scale: settings that were kept have these. */
export const FORMER_NAMES: ReadonlyMap<string, Level> = new Map([
  ['first steps', 'beginner'],
  ['growing', 'intermediate'],
  ['fluent', 'advanced'],
]);
