/** A, a count. */
export const a = 1;
