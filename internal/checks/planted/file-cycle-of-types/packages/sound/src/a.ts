import type { C } from './c.ts';
/** A. */
export type A = C;
