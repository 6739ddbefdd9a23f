/** C. */
export type C = import('./b.ts').B;
