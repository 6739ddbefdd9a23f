/// <reference types="node" />
/** One, a count. */
export const one = 1;
