import { isBreakDue } from '@shedbook/coach';
import { expect, it } from 'vitest';
import { PlayingTime } from './playing-time.ts';

/** Looks every five seconds for so many minutes. */
function pass(time: PlayingTime, from: number, minutes: number, isPlaying: boolean): number {
  let now = from;
  for (let i = 0; i < minutes * 12; i += 1) {
    now += 5;
    time.look(now, isPlaying);
  }
  return now;
}

it('[ST90] a break is due after twenty-five minutes of playing, short silences not counted as one', () => {
  const time = new PlayingTime();
  time.look(0, false);
  let now = pass(time, 0, 20, true);
  now = pass(time, now, 2, false);
  // common practice: a break after twenty-five minutes
  expect(isBreakDue(time.withoutBreakSeconds)).toBe(false);
  pass(time, now, 5, true);
  expect(isBreakDue(time.withoutBreakSeconds)).toBe(true);
});

it('[ST90] five minutes of silence are a break, and it can be put off for ten minutes', () => {
  const time = new PlayingTime();
  time.look(0, false);
  let now = pass(time, 0, 26, true);
  time.putOff();
  expect(isBreakDue(time.withoutBreakSeconds)).toBe(false);
  now = pass(time, now, 10, true);
  expect(isBreakDue(time.withoutBreakSeconds)).toBe(true);
  pass(time, now, 5, false);
  expect(time.withoutBreakSeconds).toBe(0);
});
