import { expect, it } from 'vitest';
import { IN_A_FILE } from '../../test/stores.ts';
import { binClockSuite } from '../../test/suites/bin-clock.suite.ts';
import { openSteadyClock } from './steady-clock.ts';

const DAY_MS = 24 * 3_600_000;
const START = Date.parse('2026-11-25T10:00:00Z');

binClockSuite(IN_A_FILE);

it('[SE45] a clock that jumps moves the bin by a week at most, and one that goes back by nothing', async () => {
  const notes = new Map<string, string>();
  const store = {
    readNote: async (key: string) => notes.get(key) ?? null,
    writeNote: async (key: string, value: string) => void notes.set(key, value),
  };
  let wall = START;
  const days = async (to: number) => {
    wall = START + to * DAY_MS;
    return ((await openSteadyClock(store, () => new Date(wall))).now().getTime() - START) / DAY_MS;
  };
  // definition: starts on these days of the computer's clock, and the days that went by in the bin
  expect(await days(0)).toBe(0);
  expect(await days(6)).toBe(6);
  expect(await days(400)).toBe(13);
  expect(await days(7)).toBe(13);
  expect(await days(9)).toBe(15);
  notes.set('steady-clock', 'nothing that can be read');
  expect(await days(9)).toBe(9);
});
