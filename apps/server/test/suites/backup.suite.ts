import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { LogPage, MadeLink, StoredStudent, Week } from '@shedbook/routes';
import { describe, expect, it } from 'vitest';
import { aDesk, ROW, takeFile } from '../backed-up.ts';
import type { TestStore } from '../stores.ts';
import { createLesson, rosterOf, send, temporaryFolder } from '../temporary.ts';

/** Backing up and restoring, in whichever database the store lies. */
export function backupSuite(store: TestStore): void {
  const { backUp, restore, setPassphrase, startTestServer } = store;

  describe('backing up', () => {
    it('[SE1601] restores everything into an empty folder: lessons, practice, links and takes', async () => {
      const { dataDir, server, lesson, id, pathname } = await aDesk(store);
      const file = join(temporaryFolder(), 'week.tar');
      await backUp(dataDir, file);
      await server.close();
      const elsewhere = join(temporaryFolder(), 'elsewhere');
      expect(await restore(elsewhere, file)).toMatchObject({
        ...{ before: null, lessons: 1, students: 1, takes: 1, leftErased: 0 },
      });
      const again = await startTestServer({ dataDir: elsewhere });
      expect((await send(again, 'GET', `/api/lessons/${lesson.id}`)).body).toEqual(lesson);
      const log = (await send(again, 'GET', `/api/students/${id}/log`)).body as LogPage;
      expect(log.rows.map(({ text }) => text)).toEqual([ROW]);
      const week = (await send(again, 'GET', `${pathname}week.json`)).body as Week;
      expect(week.takes.map(({ facts }) => facts.id)).toEqual(['phone 1']);
      const take = await fetch(new URL(`/api/students/${id}/takes/phone%201`, again.url));
      expect(Buffer.from(await take.arrayBuffer())).toEqual(takeFile('phone 1'));
    });

    it('[SE1602] takes what comes while it is made whole or not at all', async () => {
      const { dataDir, sendTake } = await aDesk(store);
      const folder = temporaryFolder();
      const sending = Promise.all(
        Array.from({ length: 24 }, (_, n) => sendTake(`phone ${n % 6}`, `${n} `.repeat(20_000))),
      );
      const made = [];
      for (let n = 0; n < 4; n += 1) made.push(await backUp(dataDir, join(folder, `${n}.tar`)));
      await sending;
      for (const { file, takes, damagedTakes } of made) {
        const restored = await restore(`${file}.restored`, file);
        expect([damagedTakes, restored.damagedTakes, restored.takes]).toEqual([0, 0, takes]);
      }
    });

    it('[SE1604] keeps what was there before, also while the desk works, and leaves erased what was erased', async () => {
      const desk = await aDesk(store);
      const { dataDir, server, id, pathname, link } = desk;
      const file = join(temporaryFolder(), 'week.tar');
      const gone = (await send(server, 'POST', '/api/students', { name: 'Zebulon Quack' }))
        .body as StoredStudent;
      const second = (await send(server, 'POST', `/api/students/${id}/links`)).body as MadeLink;
      await desk.sendTake('phone 2');
      await backUp(dataDir, file);
      await send(server, 'DELETE', `/api/students/${gone.id}/for-good`);
      await send(server, 'DELETE', `/api/links/${second.link.id}`);
      await fetch(new URL(`${pathname}takes/phone%202`, server.url), { method: 'DELETE' });
      await createLesson(server, 'title: Written since\n');
      const restored = await restore(dataDir, file);
      // a student, a link and a take
      expect(restored).toMatchObject({ lessons: 1, students: 1, takes: 1, leftErased: 3 });
      expect(await rosterOf(server)).toHaveLength(1);
      expect((await send(server, 'GET', `/api/students/${id}/links`)).body).toMatchObject([{ id: link.id }]);
      expect(((await send(server, 'GET', '/api/lessons')).body as unknown[]).length).toBe(1);
      await restore(dataDir, restored.before ?? '');
      expect(((await send(server, 'GET', '/api/lessons')).body as unknown[]).length).toBe(2);
      expect((await send(server, 'GET', `${pathname}week.json`)).status).toBe(200);
    });

    it('[SE1605] leaves nothing of who is erased in what was kept before', async () => {
      const { dataDir, server, id } = await aDesk(store);
      const file = join(temporaryFolder(), 'week.tar');
      await backUp(dataDir, file);
      const { before } = await restore(dataDir, file);
      const bytes = () => readFileSync(before ?? '', 'latin1');
      expect([bytes().includes('Ifeoma'), bytes().includes('sound sound')]).toEqual([true, true]);
      await send(server, 'DELETE', `/api/students/${id}/for-good`);
      expect([bytes().includes('Ifeoma'), bytes().includes('sound sound')]).toEqual([false, false]);
      expect(await restore(dataDir, before ?? '')).toMatchObject({ lessons: 1, students: 0, takes: 0 });
    });

    it('[SE1606] leaves passphrase and sign-ins as they are, and gives a new folder the passphrase of the backup', async () => {
      const { dataDir } = await aDesk(store);
      await setPassphrase('the first passphrase', dataDir);
      const file = join(temporaryFolder(), 'week.tar');
      await backUp(dataDir, file);
      await setPassphrase('another passphrase', dataDir);
      await restore(dataDir, file);
      const fresh = join(temporaryFolder(), 'fresh');
      await restore(fresh, file);
      const signIn = async (folder: string, passphrase: string) => {
        const server = await startTestServer({ dataDir: folder, address: 'https://lessons.example' });
        return (await send(server, 'POST', '/api/session', { passphrase })).status;
      };
      expect(await signIn(dataDir, 'another passphrase')).toBe(200);
      expect(await signIn(fresh, 'the first passphrase')).toBe(200);
    });
  });
}
