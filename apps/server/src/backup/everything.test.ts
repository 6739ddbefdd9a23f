import type { MadeLink, StoredStudent } from '@shedbook/routes';
import { expect, it } from 'vitest';
import { createLesson, send, startTestServer } from '../../test/temporary.ts';

const ENTRY = { id: 'phone 1', startedAt: '2026-11-25T18:30:00+01:00' };

it('[SE2204] writes lessons, students and practice as JSON that anybody reads, without a secret', async () => {
  const server = await startTestServer();
  const lesson = await createLesson(server, 'title: First swing\n');
  const made: StoredStudent[] = [];
  for (const name of ['Kaito', 'Bram'])
    made.push((await send(server, 'POST', '/api/students', { name })).body as StoredStudent);
  const [kaito] = made;
  const rows = [JSON.stringify(ENTRY), 'half an ent'];
  await send(server, 'POST', `/api/students/${kaito?.id}/log`, { version: 1, rows });
  const { address } = (await send(server, 'POST', `/api/students/${kaito?.id}/links`)).body as MadeLink;
  const response = await fetch(new URL('/api/everything.json', server.url));
  expect(response.headers.get('content-disposition')).toMatch(/shedbook-\d{4}-\d\d-\d\d\.json/);
  const text = await response.text();
  expect(JSON.parse(text)).toMatchObject({
    version: 1,
    lessons: [{ id: lesson.id, text: 'title: First swing\n', shelves: [], isArchived: false }],
    students: [
      {
        name: 'Kaito',
        practice: [{ version: 1, entry: ENTRY }, { text: 'half an ent' }],
        takes: [],
        links: [{}],
      },
      { name: 'Bram', practice: [], links: [] },
    ],
  });
  expect(text).not.toContain(new URL(address).pathname.split('/')[2]);
});
