/** C, a count. */
export const c = 1;
