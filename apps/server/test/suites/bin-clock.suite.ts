import { expect, it } from 'vitest';
import { createLessonStore } from '../../src/store/lessons.ts';
import { openSteadyClock } from '../../src/store/steady-clock.ts';
import type { TestStore } from '../stores.ts';
import { temporaryFolder } from '../temporary.ts';

/** The clock of the bin, in whichever database it lies. */
export function binClockSuite({ open }: TestStore): void {
  const DAY_MS = 24 * 3_600_000;
  const START = Date.parse('2026-11-25T10:00:00Z');

  it('[SE45] what lies in the bin outlives a clock that is a year ahead for one start', async () => {
    const database = await open(temporaryFolder());
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
}
