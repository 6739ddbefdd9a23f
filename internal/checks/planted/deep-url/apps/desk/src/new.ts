/** The other's ear. */
export const ear = new Worker(new URL('../../practice/src/ear.ts', import.meta.url));
