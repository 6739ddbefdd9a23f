import { readFileSync } from 'node:fs';

/** Reads a file of this computer. */
export const read = (): Buffer => readFileSync(process.cwd());
