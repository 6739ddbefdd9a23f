import { Seconds, type Voice } from '@shedbook/core';
import { expect, it } from 'vitest';
import { settled } from './settle.ts';

const struck = (voice: Voice, timeSeconds: number, levelDb = 0) => ({
  voice,
  levelDb,
  timeSeconds: Seconds(timeSeconds),
});
const voicesOf = (...strokes: readonly ReturnType<typeof struck>[]) =>
  settled(strokes).map(({ voice }) => voice);

it('[LI4402] an open hat is told beside closed ones; a hat that only sounds open is a plain one', () => {
  expect(voicesOf(struck('hihat-open', 0), struck('hihat-open', 1))).toEqual(['hihat', 'hihat']);
  expect(voicesOf(struck('hihat', 0), struck('hihat-open', 1))).toEqual(['hihat', 'hihat-open']);
});

it('[LI4402] what sounds like a crash as soft as the hi-hat foot is a brush and no crash', () => {
  expect(voicesOf(struck('hihat-foot', 0), struck('crash', 1, -3))).toEqual(['hihat-foot']);
  expect(voicesOf(struck('hihat-foot', 0), struck('crash', 1, 15))).toEqual(['hihat-foot', 'crash']);
});

it('[LI4402] a hand that keeps time on closed hats leaves the foot nothing to close', () => {
  const hats = Array.from({ length: 8 }, (_, i) => struck('hihat', i));
  expect(voicesOf(...hats, struck('hihat-foot', 1), struck('hihat-foot', 3))).not.toContain('hihat-foot');
  // Hats that open are closed again by the foot, and a ride leaves the foot free.
  expect(voicesOf(...hats, struck('hihat-open', 8), struck('hihat-foot', 9))).toContain('hihat-foot');
  expect(voicesOf(struck('ride', 0), struck('hihat-foot', 1))).toContain('hihat-foot');
});
