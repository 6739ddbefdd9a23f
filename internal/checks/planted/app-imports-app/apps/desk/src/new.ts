import type { x } from '@shedbook/server';
/** X. */
export type X = typeof x;
