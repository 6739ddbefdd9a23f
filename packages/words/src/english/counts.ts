/** Patterns read out by their counts, in English. */

/** What is said besides the counts themselves. */
export const counts = {
  silent: 'silent',
  bar: 'bar {$n :integer}',
} as const;
