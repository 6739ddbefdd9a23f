import { afterEach, expect, it, vi } from 'vitest';
import { inTime } from './in-time.ts';

afterEach(() => vi.useRealTimers());

it('[ST241] gives what comes, and ends what does not', async () => {
  vi.useFakeTimers();
  expect(await inTime(Promise.resolve('sound'), 4000)).toBe('sound');
  await expect(inTime(Promise.reject(new Error('refused')), 4000)).rejects.toThrow('refused');
  const never = inTime(new Promise(() => undefined), 4000);
  const ended = expect(never).rejects.toThrow('4000 ms');
  await vi.advanceTimersByTimeAsync(4000);
  await ended;
});
