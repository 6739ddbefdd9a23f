/** Of nothing. */
const one = 1;
export const two = one;
