import { expect, it } from 'vitest';
import { PlayedTime } from './played-time.ts';

it('[ST146] counts what sounded, and no night that the device slept through', () => {
  const time = new PlayedTime(100);
  // definition: five looks, five seconds apart
  for (let now = 105; now <= 125; now += 5) time.look(now);
  expect(time.seconds).toBe(25);
  time.look(125 + 8 * 3600);
  expect(time.seconds).toBeLessThanOrEqual(40);
  // a clock that goes back counts for nothing
  time.look(50);
  expect(time.seconds).toBeLessThanOrEqual(40);
});
