/** Wie herum das Schlagzeug steht, zur Wahl. */
export const SET_UP_NAMES = {
  'right-handed': 'Rechtshändig',
  'left-handed': 'Linkshändig',
} as const;
