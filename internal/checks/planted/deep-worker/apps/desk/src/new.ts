/** The other's ear. */
export const ear = new Worker('../../practice/src/ear.ts');
