/** What a queue of work does, in each kind of store. */
import { randomUUID } from 'node:crypto';
import { describe, expect, it, onTestFinished } from 'vitest';
import { killWorkers } from '../../../../internal/testing/work-kills.mjs';
import { isPostgres } from '../../src/store/engine.ts';
import { openFileShelf } from '../../src/work/file-shelf.ts';
import { openPostgresShelf } from '../../src/work/postgres-shelf.ts';
import { createWorkQueue, type WorkEnd } from '../../src/work/work-queue.ts';
import { MOST_TRIES } from '../../src/work/work-shelf.ts';
import type { TestStore } from '../stores.ts';
import { temporaryFolder } from '../temporary.ts';

const DONE: WorkEnd = { at: 'done', told: null };

/** A piece of work. */
function order() {
  return { id: randomUUID(), kind: 'film', of: 'first-swing' };
}

export function workSuite(store: TestStore): void {
  /** The shelf of a server in a folder; what is begun is held for so many milliseconds. */
  const shelfIn = async (folder: string, heldMs?: number) => {
    const database = await store.open(folder);
    onTestFinished(() => database.destroy());
    return isPostgres(database)
      ? openPostgresShelf(database, ['film'], heldMs)
      : openFileShelf(folder, heldMs);
  };
  /** The queue of a server in a folder. */
  const queueIn = async (folder: string, heldMs?: number) => {
    const queue = createWorkQueue(await shelfIn(folder, heldMs));
    onTestFinished(() => queue.close());
    return queue;
  };

  describe('a queue of work', () => {
    it('[SE7303] does each piece once, in order, by whichever server comes to it, and tells the other how far it is', async () => {
      const folder = temporaryFolder();
      const [one, two] = [await queueIn(folder), await queueIn(folder)];
      const all = Array.from({ length: 6 }, order);
      for (const each of all) await one.add(each);
      expect(await two.find(all[0]?.id ?? '')).toMatchObject({ at: 'waiting', told: null });
      expect(await two.find('gone')).toBeNull();
      const begun: string[] = [];
      let end = (): void => {};
      const mayEnd = new Promise<void>((resolve) => {
        end = resolve;
      });
      for (const queue of [one, two])
        queue.work('film', async ({ id }, _signal, tell) => {
          begun.push(id);
          tell(`half of ${id}`);
          await mayEnd;
          return { at: 'done', told: `all of ${id}` };
        });
      await expect.poll(() => begun.length).toBe(2);
      expect(begun.toSorted()).toEqual([all[0]?.id, all[1]?.id].toSorted());
      const first = all[0]?.id ?? '';
      await expect
        .poll(async () => [await one.find(first), await two.find(first)].map((each) => each?.told))
        .toEqual([`half of ${first}`, `half of ${first}`]);
      expect(await two.find(first)).toMatchObject({ at: 'begun', of: 'first-swing' });
      end();
      await expect
        .poll(async () => (await one.list()).map(({ at, told }) => [at, told]))
        .toEqual(all.map(({ id }) => ['done', `all of ${id}`]));
      expect(begun.toSorted()).toEqual(all.map(({ id }) => id).toSorted());
    });

    it('[SE7304] is left off by whoever does it when it is taken away, by any server', async () => {
      const folder = temporaryFolder();
      const [one, two] = [await queueIn(folder), await queueIn(folder)];
      const [first, second] = [order(), order()];
      await one.add(first);
      await one.add(second);
      const told: string[] = [];
      one.work('film', ({ id }, signal) => {
        told.push(`begun ${id}`);
        return new Promise((_resolve, reject) => {
          signal.addEventListener('abort', () => {
            told.push(`left ${id}`);
            reject(new Error('nobody waits'));
          });
        });
      });
      await expect.poll(() => told.length).toBe(1);
      expect([await two.remove(second.id), await two.remove(second.id)]).toEqual([true, false]);
      expect(await two.remove(first.id)).toBe(true);
      await expect.poll(() => told).toEqual([`begun ${first.id}`, `left ${first.id}`]);
      expect(await one.list()).toEqual([]);
      expect(await one.find(first.id)).toBeNull();
    });

    it('[SE7305] begins anew what a killed server had begun, not for ever, and at once what one lets go of', async () => {
      const folder = temporaryFolder();
      const [lost, kept] = [order(), order()];
      // who holds it says so no more: as if its server were killed
      const shelf = await shelfIn(folder, 50);
      await shelf.add(lost);
      for (let n = 0; n < MOST_TRIES; n += 1) {
        await expect.poll(() => shelf.take('film', `server ${n}`)).toMatchObject({ id: lost.id });
        expect(await shelf.hold(lost.id, 'another server', null)).toBe(false);
      }
      await expect
        .poll(async () => [await shelf.take('film', 'the last'), (await shelf.find(lost.id))?.at])
        .toEqual([null, 'failed']);
      const [one, two] = [await queueIn(folder), await queueIn(folder)];
      await one.add(kept);
      let begun = 0;
      one.work('film', (_work, signal) => {
        begun += 1;
        return new Promise((_resolve, reject) =>
          signal.addEventListener('abort', () => reject(new Error('ends'))),
        );
      });
      await expect.poll(() => begun).toBe(1);
      await one.close();
      expect(await two.find(kept.id)).toMatchObject({ at: 'waiting' });
      two.work('film', async () => DONE);
      await expect.poll(async () => (await two.find(kept.id))?.at).toBe('done');
    });

    it('[SE7307] loses nothing and does nothing twice when servers are killed over it', async () => {
      const folder = temporaryFolder();
      const address = (await store.addressOf(folder)) ?? '';
      // `npm run bench week` does so two hundred times
      const { broken, done } = await killWorkers(folder, 1, 7307, { address });
      expect(broken).toEqual([]);
      expect(done).toBeGreaterThan(0);
    });
  });
}
