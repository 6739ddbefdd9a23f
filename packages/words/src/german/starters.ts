/** What the grooves to start from are called, in German. */
import type { StarterName } from '@shedbook/core';

/** By the name of the groove. */
export const starters = {
  swing: 'Swing',
  'jazz-waltz': 'Jazz-Walzer',
  shuffle: 'Shuffle',
  'rock-eighths': 'Rock in Achteln',
  'sixteenth-funk': 'Sechzehntel-Funk',
  bossa: 'Bossa nova',
  samba: 'Samba',
  'six-eight': 'Sechsachtel',
  'twelve-eight': 'Zwölfachtel',
  brushes: 'Besen',
} satisfies Readonly<Record<StarterName, string>>;
