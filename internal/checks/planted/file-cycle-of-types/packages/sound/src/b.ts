export type { A as B } from './a.ts';
