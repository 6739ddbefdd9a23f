export { type Fraction, twoThirds } from './rhythm/fraction.ts';
export { readTitle } from './lesson/lesson.ts';
