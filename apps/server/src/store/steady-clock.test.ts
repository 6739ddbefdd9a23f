import { expect, it } from 'vitest';
import { temporaryFolder } from '../../test/temporary.ts';
import { createLessonStore } from './lessons.ts';
import { openDatabase } from './open.ts';
import { openSteadyClock } from './steady-clock.ts';

const DAY_MS = 24 * 3_600_000;
const START = Date.parse('2026-11-25T10:00:00Z');

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

it('[SE45] what lies in the bin outlives a clock that is a year ahead for one start', async () => {
  const database = openDatabase(temporaryFolder());
  let wall = START;
  const notes = createLessonStore(database, () => new Date(wall));
  const start = async (day: number) => {
    wall = START + day * DAY_MS;
    const clock = await openSteadyClock(notes, () => new Date(wall));
    const store = createLessonStore(database, () => new Date(wall), clock.now);
    await store.forgetRemovedBefore(new Date(clock.now().getTime() - 30 * DAY_MS));
    return store;
  };
  const first = await start(0);
  const { id } = await first.create('title: Kept');
  await first.remove(id);
  await start(365);
  const again = await start(1);
  expect(await again.restore(id)).toMatchObject({ id });
  await again.remove(id);
  for (const day of [8, 15, 22, 29, 36]) await start(day);
  expect(await again.restore(id)).toBeNull();
  await database.destroy();
});
