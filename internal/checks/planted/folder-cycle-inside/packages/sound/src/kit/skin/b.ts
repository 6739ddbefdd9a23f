/** B, a count. */
export const b = 1;
