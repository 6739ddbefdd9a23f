/** What the grooves to start from are called, in English. */
import type { StarterName } from '@shedbook/core';

/** By the name of the groove. */
export const starters = {
  swing: 'Swing',
  'jazz-waltz': 'Jazz waltz',
  shuffle: 'Shuffle',
  'rock-eighths': 'Rock in eighths',
  'sixteenth-funk': 'Sixteenth-note funk',
  bossa: 'Bossa nova',
  samba: 'Samba',
  'six-eight': 'Six-eight',
  'twelve-eight': 'Twelve-eight',
  brushes: 'Brushes',
} satisfies Readonly<Record<StarterName, string>>;
