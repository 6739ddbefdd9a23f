/** The grooves that a lesson can start from, by name; their texts lie in `starters.data.ts`. */

/** The names, in the order in which they are offered. */
export const STARTER_NAMES = [
  'swing',
  'jazz-waltz',
  'shuffle',
  'rock-eighths',
  'sixteenth-funk',
  'bossa',
  'samba',
  'six-eight',
  'twelve-eight',
  'brushes',
] as const;

/** Name of a groove. */
export type StarterName = (typeof STARTER_NAMES)[number];
