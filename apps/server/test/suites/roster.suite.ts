import { ROSTER_PAGE, type RosterPage, type StoredStudent } from '@shedbook/routes';
import { expect, it } from 'vitest';
import { createStudentStore } from '../../src/store/students.ts';
import type { TestStore } from '../stores.ts';
import { send, temporaryFolder } from '../temporary.ts';

/** The roster, in whichever database it lies. */
export function rosterSuite({ open, startTestServer }: TestStore): void {
  const NAMES = ['Bram', 'Ifeoma', 'Kaito', 'Sunniva Østby', 'Jürgen Groß'];
  const MORE = Array.from({ length: 2 * ROSTER_PAGE }, (_, n) => `Student ${n}`);

  it('[SE2200] sends the roster part by part, everybody once and in the order in which they came', async () => {
    const server = await startTestServer();
    const names = [...NAMES, ...MORE];
    for (const name of names) await send(server, 'POST', '/api/students', { name });
    const part = async (query: string) =>
      (await send(server, 'GET', `/api/students${query}`)).body as RosterPage;
    const read: StoredStudent[] = [];
    let parts = 0;
    for (let after: string | null = ''; after !== null; parts += 1) {
      const page: RosterPage = await part(`?after=${encodeURIComponent(after)}`);
      expect(page.of).toBe(names.length);
      read.push(...page.students);
      after = page.next;
    }
    expect(read.map(({ name }) => name)).toEqual(names);
    expect(parts).toBe(3);
    const found = async (find: string) =>
      (await part(`?find=${encodeURIComponent(find)}`)).students.map(({ name }) => name);
    // standard: Unicode, canonical decomposition and full case mapping: ü is u and a mark, ß is SS in capitals
    expect(await found('JURGEN gross')).toEqual(['Jürgen Groß']);
    expect(await found('gross kaito')).toEqual([]);
    // what stands for anything elsewhere stands for itself here
    expect(await found('%')).toEqual([]);
    expect(await found('_')).toEqual([]);
    const [, , kaito] = read;
    await send(server, 'PUT', `/api/students/${kaito?.id}`, { name: 'Émile', assignments: [], revision: 1 });
    expect([await found('kaito'), await found('emile')]).toEqual([[], ['Émile']]);
    expect((await send(server, 'GET', `/api/students/${kaito?.id}`)).body).toMatchObject({ name: 'Émile' });
    // whoever left between two parts costs nobody their place
    const { next } = await part('');
    await send(server, 'DELETE', `/api/students/${read[ROSTER_PAGE - 1]?.id}`);
    const { students, of } = await part(`?after=${encodeURIComponent(next ?? '')}`);
    expect([students[0]?.name, of]).toEqual([read[ROSTER_PAGE]?.name, names.length - 1]);
    expect((await send(server, 'GET', `/api/students/${read[ROSTER_PAGE - 1]?.id}`)).status).toBe(404);
  });

  it('[SE2201] [SE4300] tells who has not played for a while, the longest first, and leaves out whoever never did', async () => {
    const database = await open(temporaryFolder());
    const store = createStudentStore(database, () => new Date('2026-11-29T12:00:00Z'));
    const played = async (name: string, ...moments: readonly string[]) => {
      const { id } = await store.create(name);
      const rows = moments.map((startedAt, n) => JSON.stringify({ id: `${n}`, startedAt }));
      await store.takeIn(id, { version: 1, rows });
      return id;
    };
    await played('Bram', '2026-11-01T18:30:00+01:00');
    const ifeoma = await played('Ifeoma', '2026-10-02T23:30:00-05:00', '2026-11-28T10:00:00Z');
    await played('Kaito');
    await played('Sunniva', '2026-10-20T10:00:00Z', '2026-09-01T10:00:00Z');
    const away = () => store.away(new Date('2026-11-20T00:00:00Z'));
    const sunniva = { name: 'Sunniva', lastPlayedAt: '2026-10-20T10:00:00Z' };
    const bram = { name: 'Bram', lastPlayedAt: '2026-11-01T18:30:00+01:00' };
    expect(await away()).toMatchObject({ away: [sunniva, bram], awayOf: 2 });
    // what was brought in by mistake and taken out again counts for nothing
    const [, second] = (await store.readLog(ifeoma, 0))?.rows ?? [];
    await database
      .updateTable('log_rows')
      .set({ removed_at: 'x' })
      .where('row', '=', second?.row ?? 0)
      .execute();
    expect((await away()).away.map(({ name }) => name)).toEqual(['Ifeoma', 'Sunniva', 'Bram']);
    // the same comes in again; then all of it goes for good
    const row = { id: '1', startedAt: '2026-11-28T10:00:00Z' };
    expect(await store.takeIn(ifeoma, { version: 1, rows: [JSON.stringify(row)] })).toBe(1);
    expect((await away()).awayOf).toBe(2);
    await database
      .deleteFrom('log_rows')
      .where('row', '=', second?.row ?? 0)
      .execute();
    expect((await away()).awayOf).toBe(3);
    await store.erase(ifeoma);
    expect((await away()).awayOf).toBe(2);
    await database.destroy();
  });

  it('[SE6500] tells who has not played for a while also where their clock was ahead, since the day it came in', async () => {
    let today = '2026-10-20T12:00:00.000Z';
    const database = await open(temporaryFolder());
    const store = createStudentStore(database, () => new Date(today));
    const { id } = await store.create('Bram');
    const play = (startedAt: string) =>
      store.takeIn(id, { version: 1, rows: [JSON.stringify({ id: startedAt, startedAt })] });
    const away = async (before: string) => (await store.away(new Date(before))).away;
    await play('2029-05-01T18:30:00+02:00');
    expect(await away('2026-11-20T00:00:00Z')).toEqual([{ id, name: 'Bram', lastPlayedAt: today }]);
    expect(await away('2026-10-20T00:00:00Z')).toEqual([]);
    // whoever played since has a day of their own again
    today = '2026-11-10T12:00:00.000Z';
    await play('2026-11-09T18:30:00+01:00');
    const [bram] = await away('2026-11-20T00:00:00Z');
    expect(bram?.lastPlayedAt).toBe('2026-11-09T18:30:00+01:00');
    await database.destroy();
  });
}
