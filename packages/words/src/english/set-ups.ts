/** Which way round the drums stand, as a choice. */
export const SET_UP_NAMES = {
  'right-handed': 'Right-handed',
  'left-handed': 'Left-handed',
} as const;
