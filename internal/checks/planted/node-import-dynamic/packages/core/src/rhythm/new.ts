/** Reads. */
export const read = async () => (await import('node:fs')).readFileSync;
