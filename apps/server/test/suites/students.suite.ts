import type { LogPage, StoredStudent } from '@shedbook/routes';
import { sql } from 'kysely';
import { expect, it } from 'vitest';
import { createStudentStore } from '../../src/store/students.ts';
import type { TestStore } from '../stores.ts';
import { rosterOf, send, temporaryFolder } from '../temporary.ts';

/** Students and their practice, in whichever database it lies. */
export function studentsSuite({ open, startTestServer }: TestStore): void {
  const SET = [
    {
      lesson: 'first-swing',
      exercise: 'snare ..x x.. ... x.x',
      pinned: true,
      note: 'slowly',
      toBpm: 96,
      by: '2026-12-06',
    },
  ] as const;

  function row(id: string, startedAt: string, bpm = 80): string {
    return JSON.stringify({ id, startedAt, loops: [{ bpm }] });
  }

  const FIRST = row('phone 1', '2026-11-25T18:30:00+01:00');
  const SECOND = row('phone 2', '2026-11-26T23:30:00-05:00');

  it('[SE40] keeps a student, and refuses a save from another revision', async () => {
    const server = await startTestServer();
    const { body } = await send(server, 'POST', '/api/students', { name: 'Kaito' });
    const made = body as StoredStudent;
    expect(made).toMatchObject({ name: 'Kaito', assignments: [], level: 'intermediate', revision: 1 });
    const path = `/api/students/${made.id}`;
    const saved = await send(server, 'PUT', path, { name: 'Kaito', assignments: SET, revision: 1 });
    expect(saved).toMatchObject({ status: 200, body: { assignments: SET, revision: 2 } });
    const stale = await send(server, 'PUT', path, { name: 'K', assignments: [], revision: 1 });
    expect(stale).toMatchObject({
      status: 409,
      body: { code: 'student-changed', values: { kept: { assignments: SET, revision: 2 } } },
    });
    const stricter = { name: 'Kaito', assignments: SET, level: 'advanced', revision: 2 };
    expect(await send(server, 'PUT', path, stricter)).toMatchObject({ body: { level: 'advanced' } });
    // a page from before students had a level sends none
    const { level: _, ...before } = { ...stricter, revision: 3 };
    expect(await send(server, 'PUT', path, before)).toMatchObject({ body: { level: 'advanced' } });
    expect(await rosterOf(server)).toMatchObject([{ name: 'Kaito', revision: 4 }]);
    const leftHanded = { ...stricter, setUp: 'left-handed', revision: 4 };
    expect(await send(server, 'PUT', path, leftHanded)).toMatchObject({ body: { setUp: 'left-handed' } });
    // a page from before students had a set-up sends none
    const kept = await send(server, 'PUT', path, { ...stricter, revision: 5 });
    expect(kept).toMatchObject({ body: { setUp: 'left-handed', revision: 6 } });
    for (const wrong of [{ name: '' }, {}]) {
      expect((await send(server, 'POST', '/api/students', wrong)).status).toBe(400);
    }
    const nobody = { name: 'x', assignments: [], revision: 1 };
    expect((await send(server, 'PUT', '/api/students/nobody', nobody)).status).toBe(404);
  });

  it('[SE44] adds to a practice log and replaces nothing of it, readable or not', async () => {
    const server = await startTestServer();
    const { id } = (await send(server, 'POST', '/api/students', { name: 'Kaito' })).body as StoredStudent;
    const path = `/api/students/${id}/log`;
    const add = async (version: number, rows: readonly string[]) =>
      (await send(server, 'POST', path, { version, rows })).body;
    const unreadable = 'half an ent';
    const fuller = row('phone 1', '2026-11-25T18:30:00+01:00', 5000);
    expect(await add(1, [FIRST, SECOND, unreadable])).toEqual({ added: 3 });
    expect(await add(1, [SECOND, FIRST, unreadable])).toEqual({ added: 0 });
    expect(await add(1, [fuller])).toEqual({ added: 1 });
    expect(await add(2, [FIRST])).toEqual({ added: 1 });
    const read = (await send(server, 'GET', path)).body as LogPage;
    // definition: everything that was ever added, in the order in which it came
    expect(read.rows.map(({ version, text }) => [version, text])).toEqual([
      [1, FIRST],
      [1, SECOND],
      [1, unreadable],
      [1, fuller],
      [2, FIRST],
    ]);
    expect(read.next).toBeNull();
    const third = read.rows[2]?.row ?? 0;
    const later = (await send(server, 'GET', `${path}?after=${third}`)).body as LogPage;
    expect(later.rows).toEqual(read.rows.slice(3));
    const [student] = await rosterOf(server);
    // definition: 23:30 at -05:00 is later than 18:30 of the day before at +01:00
    expect(student).toMatchObject({ lastPlayedAt: '2026-11-26T23:30:00-05:00', lastRow: read.rows[4]?.row });
    expect((await send(server, 'GET', '/api/students/nobody/log')).status).toBe(404);
    expect((await send(server, 'POST', '/api/students/nobody/log', { version: 1, rows: [] })).status).toBe(
      404,
    );
  });

  it('[SE44] reads a long log in parts', async () => {
    const database = await open(temporaryFolder());
    const store = createStudentStore(database, () => new Date());
    const { id } = await store.create('Bram');
    const rows = Array.from({ length: 2345 }, (_, n) => row(`phone ${n}`, '2026-11-25T18:30:00+01:00'));
    expect(await store.takeIn(id, { version: 1, rows })).toBe(rows.length);
    const read: string[] = [];
    let parts = 0;
    for (let after: number | null = 0; after !== null; parts += 1) {
      const page: LogPage | null = await store.readLog(id, after);
      read.push(...(page?.rows ?? []).map(({ text }) => text));
      after = page?.next ?? null;
    }
    expect(read).toEqual(rows);
    expect(parts).toBeGreaterThan(1);
    await database.destroy();
  });

  it('[SE4001] keeps thousands of rows of one entry each once, and anew one that changed on the disk', async () => {
    const database = await open(temporaryFolder());
    const store = createStudentStore(database, () => new Date());
    const { id } = await store.create('Bram');
    const rows = Array.from({ length: 3000 }, (_, n) => row('phone 1', '2026-11-25T18:30:00+01:00', n));
    const add = () => store.takeIn(id, { version: 1, rows });
    expect([await add(), await add()]).toEqual([rows.length, 0]);
    await sql`update log_rows set text = replace(text, 'phone', 'phome') where row = 7`.execute(database);
    expect([await add(), await add()]).toEqual([1, 0]);
    expect((await store.readLog(id, rows.length))?.rows.map(({ text }) => text)).toEqual([rows[6]]);
    await database.destroy();
  });

  it('[SE41] takes a student off the roster, brings them back whole, and forgets them in the end', async () => {
    const database = await open(temporaryFolder());
    let now = new Date('2026-11-25T10:00:00Z');
    const store = createStudentStore(database, () => now);
    const { id } = await store.create('Sunniva');
    await store.save(id, { name: 'Sunniva', assignments: SET, revision: 1 });
    await store.takeIn(id, { version: 1, rows: [FIRST] });
    expect([await store.remove(id), await store.remove(id), await store.list()]).toEqual([true, false, []]);
    expect(await store.restore(id)).toMatchObject({ name: 'Sunniva', assignments: SET });
    expect((await store.readLog(id, 0))?.rows).toMatchObject([{ text: FIRST }]);
    await store.remove(id);
    now = new Date('2026-11-26T10:00:00Z');
    await store.forgetRemovedBefore(new Date('2026-11-25T09:00:00Z'));
    expect(await store.restore(id)).not.toBeNull();
    await store.remove(id);
    await store.forgetRemovedBefore(new Date('2026-11-27T10:00:00Z'));
    expect(await store.restore(id)).toBeNull();
    expect(await database.selectFrom('log_rows').selectAll().execute()).toEqual([]);
    await database.destroy();
  });
}
