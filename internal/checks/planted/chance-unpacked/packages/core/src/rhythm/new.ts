const { random } = Math;
/** Chance. */
export const chance = random;
