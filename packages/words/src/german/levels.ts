/** What the levels of students are called, in German. */

/** By the level. */
export const LEVEL_NAMES = {
  beginner: 'Erste Schritte',
  intermediate: 'Im Werden',
  advanced: 'Fließend',
} as const;
