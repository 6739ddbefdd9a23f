import type { LessonSummary, StoredStudent } from '@shedbook/routes';
import { expect, it } from 'vitest';
import type { TestStore } from '../stores.ts';
import { createLesson, send } from '../temporary.ts';

/** The list of lessons, in whichever database it lies. */
export function shelfSuite({ startTestServer }: TestStore): void {
  const SWING =
    'title: First swing\nby: Oda\nfeel: triplet\nexercises: [{ pattern: x.. ... ..x ..., name: Charleston }]\n';
  const WALTZ = 'title: A waltz\nmeter: 3/4\nexercises: [x . x, x x x]\n';

  it('[SE420] lists lessons without their texts, as they are after every change', async () => {
    const server = await startTestServer();
    const shelf = async () => (await send(server, 'GET', '/api/shelf')).body as readonly LessonSummary[];
    const swing = await createLesson(server, SWING);
    await createLesson(server, SWING.replace('First swing', 'The same again'));
    const waltz = await createLesson(server, WALTZ);
    const broken = await createLesson(server, 'title: "Broken"\nmeter: 9\n');
    const [last, third, twin, first] = await shelf();
    expect(last).toMatchObject({
      id: broken.id,
      title: 'Broken',
      errors: 1,
      exercises: 0,
      style: null,
      plays: null,
    });
    expect(third).toMatchObject({ id: waltz.id, title: 'A waltz', style: 'waltz', exercises: 2, errors: 0 });
    expect(first).toMatchObject({
      id: swing.id,
      by: 'Oda',
      style: 'swing',
      finds: '4/4\nCharleston',
      exercises: 1,
    });
    expect(first).not.toHaveProperty('text');
    // definition: the same exercises over the same groove, whatever the title
    expect(twin?.plays).toBe(first?.plays);
    expect(third?.plays).not.toBe(first?.plays);
    const text = WALTZ.replace('x x x', 'x . .').replace('A waltz', 'A slow waltz');
    await send(server, 'PUT', `/api/lessons/${waltz.id}`, { text, revision: 1, cause: 'edit' });
    const [changed] = await shelf();
    expect(changed).toMatchObject({ id: waltz.id, title: 'A slow waltz', revision: 2 });
    expect(changed?.plays).not.toBe(third?.plays);
    await send(server, 'DELETE', `/api/lessons/${waltz.id}`);
    expect((await shelf()).map(({ id }) => id)).not.toContain(waltz.id);
  });

  it('[SE421] files a lesson under a level, on shelves and in the archive; its text and revision stay', async () => {
    const server = await startTestServer();
    const { id } = await createLesson(server, WALTZ);
    const filing = { level: 'beginner', shelves: ['Tuesday', 'Kaito'], isArchived: true };
    expect((await send(server, 'PUT', `/api/lessons/${id}/filing`, filing)).status).toBe(204);
    const [filed] = (await send(server, 'GET', '/api/shelf')).body as readonly LessonSummary[];
    expect(filed).toMatchObject({ id, revision: 1, ...filing });
    expect((await send(server, 'GET', `/api/lessons/${id}`)).body).toMatchObject({
      text: WALTZ,
      revision: 1,
    });
    expect((await send(server, 'PUT', '/api/lessons/nowhere/filing', filing)).status).toBe(404);
  });

  it('[SE6411] refuses a text with a NUL character, wherever it stands', async () => {
    const server = await startTestServer();
    const { id } = await createLesson(server, WALTZ);
    const refused = (path: string) => ({
      status: 400,
      body: { code: 'bad-request', values: { places: [{ path, problem: 'nul_character' }] } },
    });
    const text = `${WALTZ}# a\0b\n`;
    expect(await send(server, 'POST', '/api/lessons', { text })).toEqual(refused('body.text'));
    const save = { text, revision: 1, cause: 'edit' };
    expect(await send(server, 'PUT', `/api/lessons/${id}`, save)).toEqual(refused('body.text'));
    const { id: student } = (await send(server, 'POST', '/api/students', { name: 'Kaito' }))
      .body as StoredStudent;
    const rows = ['half an ent', 'a\0b'];
    expect(await send(server, 'POST', `/api/students/${student}/log`, { version: 1, rows })).toEqual(
      refused('body.rows.1'),
    );
    expect(await send(server, 'GET', '/api/students?find=a%00b')).toEqual(refused('query.find'));
    expect((await send(server, 'GET', `/api/lessons/${id}`)).body).toMatchObject({
      text: WALTZ,
      revision: 1,
    });
  });
}
