export type { Fraction } from '@shedbook/core';
export { hear } from './hear.ts';
