/** What the command line says, in English. */

/** The messages. */
export const cliEnglish = {
  why: {
    title:
      '{$number :integer}. {$pattern}: {$points :number minimumFractionDigits=1 maximumFractionDigits=1} points',
  },
} as const;
