/**
 * How far a student is, and what each level still lets pass.
 *
 * Conventions: milliseconds, decibels, shares from 0 to 1; a level that allows less stands later.
 * Sources: what is just noticed stands with its sources in `perception/perception.data.ts`. How many times that a
 * level allows, the decibels and the shares are our choice: a beginner is told of the coarsest things only, and a
 * single stroke just out of what anyone could notice is nobody's stumble.
 */

/** Levels of students, in order of strictness. */
export const LEVELS = ['beginner', 'intermediate', 'advanced'] as const;
/** How far a student is. */
export type Level = (typeof LEVELS)[number];

/** What a level still lets pass. Figures without "Loop" or "Take" in their name hold for both. */
export interface Allowance {
  /** Lateness of a stroke or a place, and error of the swing, in displacements that are just noticed. */
  readonly displacements: number;
  /**
   * Lateness in ms where limbs strike together. Two strokes that are each within half of the 22 ms at which two are
   * heard as two cannot be heard apart: 11 ms at the strictest.
   */
  readonly togetherMs: number;
  /** Change of tempo, or distance from the tempo that was asked, as a ratio to what is just noticed. */
  readonly tempi: number;
  /** A voice's median level beside the lesson's, both relative to the lead voice, in dB. */
  readonly balanceDb: number;
  /** Spread of the levels of a voice's plain strokes over a take, in dB; a loop has too few strokes to tell. */
  readonly takeUnevenDb: number;
  /** Share of one voice's strokes that a whole take may leave out or add before it is worth a word. */
  readonly takeWrongShare: number;
  /**
   * Share of all strokes that one clean loop may leave out or add: stricter than `takeWrongShare`, for a take tells a
   * teacher what to speak of, and a loop decides whether the tempo goes up.
   */
  readonly loopWrongShare: number;
  /** Share of all strokes of one clean loop that may be early or late. */
  readonly loopLooseShare: number;
  /** Share of strokes left out, added, early or late from which a loop is a stumble. */
  readonly loopStumbleShare: number;
}

/** What each level lets pass. */
export const ALLOWANCES: Readonly<Record<Level, Allowance>> = {
  beginner: {
    displacements: 5,
    togetherMs: 30,
    tempi: 3,
    balanceDb: 8,
    takeUnevenDb: 6,
    takeWrongShare: 0.1,
    loopWrongShare: 0.05,
    loopLooseShare: 0.15,
    loopStumbleShare: 0.3,
  },
  intermediate: {
    displacements: 3.5,
    togetherMs: 22,
    tempi: 2,
    balanceDb: 6,
    takeUnevenDb: 4.5,
    takeWrongShare: 0.05,
    loopWrongShare: 0.025,
    loopLooseShare: 0.1,
    loopStumbleShare: 0.25,
  },
  advanced: {
    displacements: 2,
    togetherMs: 11,
    tempi: 1,
    balanceDb: 4,
    takeUnevenDb: 3,
    takeWrongShare: 0.02,
    loopWrongShare: 0,
    loopLooseShare: 0.05,
    loopStumbleShare: 0.2,
  },
};

/** What the levels were called by the practice page before there was one scale: settings that were kept have these. */
export const FORMER_NAMES: ReadonlyMap<string, Level> = new Map([
  ['first steps', 'beginner'],
  ['growing', 'intermediate'],
  ['fluent', 'advanced'],
]);
