export { twoThirds } from '../../core/src/rhythm/fraction.ts';
