import type { BinContent, LogPage, StoredStudent } from '@shedbook/routes';
import { expect, it } from 'vitest';
import type { TestStore } from '../stores.ts';
import { createLesson, rosterOf, send } from '../temporary.ts';

/** The bin, in whichever database it lies. */
export function binSuite({ startTestServer }: TestStore): void {
  const ROW = JSON.stringify({ id: 'phone 1', startedAt: '2026-11-25T18:30:00+01:00' });

  it('[SE400] keeps lessons, students and what was taken in by mistake in a bin, brings them back and erases them', async () => {
    const server = await startTestServer();
    const ask = async (method: string, path: string, body?: unknown) =>
      (await send(server, method, path, body)).body;
    const bin = () => ask('GET', '/api/bin') as Promise<BinContent>;
    const lesson = await createLesson(server, 'title: Gone\n');
    const bram = (await ask('POST', '/api/students', { name: 'Bram' })) as StoredStudent;
    const kaito = (await ask('POST', '/api/students', { name: 'Kaito' })) as StoredStudent;
    await ask('POST', `/api/students/${kaito.id}/log`, { version: 1, rows: [ROW] });
    const [taken] = ((await ask('GET', `/api/students/${kaito.id}/log`)) as LogPage).rows;
    const log = `/api/students/${kaito.id}/log/${taken?.takenAt}`;
    await ask('DELETE', `/api/lessons/${lesson.id}`);
    await ask('DELETE', `/api/students/${bram.id}`);
    expect((await send(server, 'DELETE', log)).status).toBe(204);
    expect(await bin()).toMatchObject({
      lessons: [{ id: lesson.id, text: 'title: Gone\n' }],
      students: [{ id: bram.id, name: 'Bram' }],
      practice: [{ student: kaito.id, name: 'Kaito', takenAt: taken?.takenAt, rows: 1 }],
    });
    const kaitoNow = async () => (await rosterOf(server)).find(({ id }) => id === kaito.id);
    expect(await kaitoNow()).toMatchObject({ rows: 0, lastPlayedAt: null });
    await ask('POST', `${log}/restore`);
    expect(await kaitoNow()).toMatchObject({ rows: 1 });
    // what is taken in once more after it was taken out is there again, once
    await ask('DELETE', log);
    expect(await ask('POST', `/api/students/${kaito.id}/log`, { version: 1, rows: [ROW] })).toEqual({
      added: 1,
    });
    expect(await kaitoNow()).toMatchObject({ rows: 1 });
    const [again] = ((await ask('GET', `/api/students/${kaito.id}/log`)) as LogPage).rows;
    await ask('DELETE', `/api/students/${kaito.id}/log/${again?.takenAt}/for-good`);
    await ask('DELETE', `/api/lessons/${lesson.id}/for-good`);
    await ask('POST', `/api/students/${bram.id}/restore`);
    expect(await bin()).toEqual({ lessons: [], books: [], students: [], practice: [] });
    expect(await kaitoNow()).toMatchObject({ rows: 0 });
    expect((await send(server, 'DELETE', log)).status).toBe(404);
  });
}
