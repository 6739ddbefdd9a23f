/** What the levels of students are called, in English. */

/** By the level. */
export const LEVEL_NAMES = {
  beginner: 'First steps',
  intermediate: 'Growing',
  advanced: 'Fluent',
} as const;
