const one = 1;
/* Two. */
export const two = one;
