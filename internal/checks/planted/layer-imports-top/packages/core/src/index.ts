/** One, a count. */
export const one = 1;
