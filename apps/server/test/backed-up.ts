/** A desk with everything in it that a backup takes. */
import type { MadeLink, StoredStudent } from '@shedbook/routes';
import { strToU8, zipSync } from 'fflate';
import { expect } from 'vitest';
import type { TestStore } from './stores.ts';
import { createLesson, send, temporaryFolder } from './temporary.ts';

const SWING = 'title: First swing\ntempo: 240\nfeel: triplet\nexercises:\n  - x.. ..x x.x ...\n';
/** The row of practice that the student has. */
export const ROW = JSON.stringify({ id: 'phone 1', startedAt: '2026-11-25T18:30:00+01:00', loops: [] });

/** A take whose sound is a long noise, so that a backup has many bytes of it. */
export function takeFile(id: string, sound = 'sound '.repeat(3000)): Buffer {
  const facts = {
    ...{ id, startedAt: '2026-11-25T18:30:00+01:00', lesson: 'first-swing', lessonTitle: 'First swing' },
    ...{ exercise: null, number: 1, form: 'loop', durationSeconds: 12.5, verdicts: [] },
  };
  const files = { 'take.json': strToU8(JSON.stringify(facts)), 'take.flac': strToU8(sound) };
  return Buffer.from(zipSync(files, { level: 0, mtime: '2026-11-25T18:30:00+01:00' }));
}

/** A desk with a lesson, and a student with practice, a private link and a take. */
export async function aDesk(
  { startTestServer }: Pick<TestStore, 'startTestServer'>,
  dataDir = temporaryFolder(),
) {
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
