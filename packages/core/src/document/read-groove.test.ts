import { expect, it } from 'vitest';
import { read } from '../../test/reading.ts';

const leadOf = (text: string) => read(`title: A beat\n${text}`).lead;

it('[LE4901] without a groove the voice leads that carries time in the exercises', () => {
  const beat = '{pattern: {bass: x . x ., snare: . x . x, hihat: xx xx xx xx}}';
  expect(leadOf(`groove: {}\nexercises: [${beat}]`)).toBe('hihat');
  // common practice: under a hi-hat the bass drum is no softer than it, under a ride it is feathered
  expect(read(`title: A beat\ngroove: {}\nexercises: [${beat}]`).exerciseBalance.bass).toBe(0);
  expect(leadOf('groove: {}\ncomping: hihat\nexercises: [xx xx xx xx]')).toBe('hihat');
  expect(leadOf('groove: {}\nexercises: [x . x .]')).toBe('ride');
  expect(leadOf(`groove: {ride: x x x x}\nexercises: [${beat}]`)).toBe('ride');
});
