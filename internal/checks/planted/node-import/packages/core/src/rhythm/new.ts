import { readFileSync } from 'node:fs';

/** Reads. */
export const read = readFileSync;
