import type { StoredLesson, StoredStudent } from '@shedbook/routes';
import { expect, it } from 'vitest';
import type { TestStore } from '../stores.ts';
import { send } from '../temporary.ts';

/** Names that are in use, in whichever database it lies. */
export function namesInUseSuite({ startTestServer }: TestStore): void {
  const TEXT = 'title: First swing\nexercises: [x . . ., . x . ., . . x ., . . . x]\n';

  it('[SE90] tells which names of a lesson are practised, set or copied', async () => {
    const server = await startTestServer();
    const made = async (text: string) =>
      (await send(server, 'POST', '/api/lessons', { text })).body as StoredLesson;
    const names = async (id: string) => (await send(server, 'GET', `/api/lessons/${id}/names`)).body;
    const lesson = await made(TEXT);
    expect(await names(lesson.id)).toEqual({ lesson: false, exercises: [] });
    const student = (await send(server, 'POST', '/api/students', { name: 'Kaito' })).body as StoredStudent;
    const assignments = [{ lesson: lesson.id, exercise: 'snare x . . .', pinned: false, note: null }];
    await send(server, 'PUT', `/api/students/${student.id}`, { name: 'Kaito', assignments, revision: 1 });
    const rows = [JSON.stringify({ id: 'a', lesson: lesson.id, exercise: 'snare . x . .' }), 'no row at all'];
    await send(server, 'POST', `/api/students/${student.id}/log`, { version: 1, rows });
    expect(await names(lesson.id)).toEqual({ lesson: false, exercises: ['snare x . . .', 'snare . x . .'] });
    const copy = await made('title: Copy\nfrom: first-swing\nexercises: [x . . .]\n');
    expect(await names(lesson.id)).toMatchObject({ lesson: true });
    expect(await names(copy.id)).toEqual({ lesson: false, exercises: ['snare x . . .'] });
    expect((await send(server, 'GET', '/api/lessons/nowhere/names')).status).toBe(404);
  });
}
