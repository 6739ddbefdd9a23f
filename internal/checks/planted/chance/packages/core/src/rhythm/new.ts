/** Chance. */
export const chance = () => Math.random();
