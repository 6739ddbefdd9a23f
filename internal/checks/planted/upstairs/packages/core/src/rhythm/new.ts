import type { loudnessDb } from '@shedbook/sound';
/** Loud. */
export type Loud = typeof loudnessDb;
