/** What both pages say where one of them breaks, in English. */

/** Instead of the page. */
export const brokenPage = {
  title: 'This page has broken down',
  lead: 'That is a fault of the program, not of yours. What you wrote and played until now is kept.',
  again: 'Open it again',
  home: 'Back to the beginning',
  copy: 'Copy what happened',
  copied: 'Copied. Send it to whoever looks after the program.',
} as const;
