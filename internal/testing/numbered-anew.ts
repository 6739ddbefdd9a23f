/** A lesson whose exercises are numbered anew in each section, what all rooms that say a number are tested on. */

/** Its text: A1; a section without exercises; B1, B2 ("Both"), B3; C1. */
export const NUMBERED_ANEW = `title: Four limbs
sheet: {numbering: anew}
exercises: [x . . .]
sections:
  - heading: Listen first
    text: Nothing to play here.
  - heading: The hands
    exercises: [x . x ., {pattern: . x . x, name: Both}, x x . .]
  - heading: The feet
    exercises: [x . . x]
`;

/** The exercises as a person reads their numbers, in order. */
export const LABELS_ANEW = ['A1', 'B1', 'B2', 'B3', 'C1'] as const;
