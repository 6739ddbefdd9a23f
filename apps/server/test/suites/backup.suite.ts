import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { LogPage, MadeLink, StoredStudent, Week } from '@shedbook/routes';
import { strToU8, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import type { TestStore } from '../stores.ts';
import { createLesson, rosterOf, send, temporaryFolder } from '../temporary.ts';

/** Backing up and restoring, in whichever database the store lies. */
export function backupSuite({ backUp, restore, setPassphrase, startTestServer }: TestStore): void {
  const SWING = 'title: First swing\ntempo: 240\nfeel: triplet\nexercises:\n  - x.. ..x x.x ...\n';
  const ROW = JSON.stringify({ id: 'phone 1', startedAt: '2026-11-25T18:30:00+01:00', loops: [] });

  /** A take whose sound is a long noise, so that a backup has many bytes of it. */
  function takeFile(id: string, sound = 'sound '.repeat(3000)): Buffer {
    const facts = {
      ...{ id, startedAt: '2026-11-25T18:30:00+01:00', lesson: 'first-swing', lessonTitle: 'First swing' },
      ...{ exercise: null, number: 1, form: 'loop', durationSeconds: 12.5, verdicts: [] },
    };
    const files = { 'take.json': strToU8(JSON.stringify(facts)), 'take.flac': strToU8(sound) };
    return Buffer.from(zipSync(files, { level: 0, mtime: '2026-11-25T18:30:00+01:00' }));
  }

  /** A desk with a lesson, and a student with practice, a private link and a take. */
  async function aDesk(dataDir = temporaryFolder()) {
    const server = await startTestServer({ dataDir });
    const lesson = await createLesson(server, SWING);
    const { id } = (await send(server, 'POST', '/api/students', { name: 'Ifeoma' })).body as StoredStudent;
    await send(server, 'POST', `/api/students/${id}/log`, { version: 1, rows: [ROW] });
    const made = (await send(server, 'POST', `/api/students/${id}/links`)).body as MadeLink;
    const { pathname } = new URL(made.address);
    const sendTake = (take: string, sound?: string) =>
      fetch(new URL(`${pathname}takes/${encodeURIComponent(take)}`, server.url), {
        method: 'PUT',
        headers: { 'content-type': 'application/octet-stream' },
        body: new Uint8Array(takeFile(take, sound)),
      });
    expect((await sendTake('phone 1')).status).toBe(201);
    return { server, dataDir, lesson, id, pathname, sendTake, link: made.link };
  }

  describe('backing up', () => {
    it('[SE1601] restores everything into an empty folder: lessons, practice, links and takes', async () => {
      const { dataDir, server, lesson, id, pathname } = await aDesk();
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
      const { dataDir, sendTake } = await aDesk();
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
      const desk = await aDesk();
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
      const { dataDir, server, id } = await aDesk();
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
      const { dataDir } = await aDesk();
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
