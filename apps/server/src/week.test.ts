import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { exerciseKey, parseLesson } from '@shedbook/core';
import type { LogPage, MadeLink, StoredStudent, Week } from '@shedbook/routes';
import { describe, expect, it } from 'vitest';
import { createLesson, rosterOf, send, startTestServer, temporaryFolder } from '../test/temporary.ts';

const SWING = 'title: First swing\ntempo: 240\nfeel: triplet\nexercises:\n  - x.. ..x x.x ...\n';
const WALTZ = 'title: Jazz waltz\nmeter: 3/4\ntempo: 240\nfeel: triplet\nexercises:\n  - x.. ..x x.x\n';

function keyOf(text: string): string {
  const exercise = parseLesson(text, 'lesson').lesson?.exercises[0];
  if (!exercise) throw new Error('the lesson has problems');
  return exerciseKey(exercise);
}

/** A server with two lessons, and a student for whom the second was set first. */
async function aWeek() {
  const dataDir = temporaryFolder();
  const server = await startTestServer({ dataDir });
  const [swing, waltz] = [await createLesson(server, SWING), await createLesson(server, WALTZ)];
  const { id } = (await send(server, 'POST', '/api/students', { name: 'Kaito' })).body as StoredStudent;
  const set = async (revision: number, texts: readonly (readonly [string, string])[]) => {
    const assignments = texts.map(([lesson, text]) => ({
      lesson,
      exercise: keyOf(text),
      pinned: false,
      note: null,
    }));
    await send(server, 'PUT', `/api/students/${id}`, {
      ...{ name: 'Kaito', level: 'advanced', setUp: 'left-handed', assignments, revision },
    });
  };
  await set(1, [
    [waltz.id, WALTZ],
    [swing.id, SWING],
  ]);
  const made = (await send(server, 'POST', `/api/students/${id}/links?language=de`)).body as MadeLink;
  const get = (path: string, headers: Record<string, string> = {}) =>
    fetch(new URL(path, made.address), { redirect: 'manual', headers });
  return { server, dataDir, swing, waltz, id, set, made, get };
}

describe('the week of a student', () => {
  it('[SE462] [SE5900] opens the practice page by a private link, with what was set in its order', async () => {
    const { server, made, get, waltz, swing, id, set } = await aWeek();
    expect(made.address).toMatch(new RegExp(`^${server.url}practice/[\\w-]{43}/$`));
    expect(made.codeSvg).toMatch(/^<svg/);
    expect((await get('.')).headers.get('location')).toBe(new URL(`${waltz.id}/`, made.address).pathname);
    const week = (await (await get('week.json')).json()) as Week;
    expect(week).toEqual({
      student: { id, name: 'Kaito' },
      level: 'advanced',
      setUp: 'left-handed',
      coach: { state: 'on', until: null },
      lessons: [
        { id: waltz.id, title: 'Jazz waltz' },
        { id: swing.id, title: 'First swing' },
      ],
      assignments: [
        { lesson: waltz.id, exercise: keyOf(WALTZ), pinned: false, note: null, toBpm: null, by: null },
        { lesson: swing.id, exercise: keyOf(SWING), pinned: false, note: null, toBpm: null, by: null },
      ],
      mayRecord: true,
      passes: [],
      takes: [],
    });
    const page = await get(`${waltz.id}/`);
    expect(page.headers.get('content-type')).toBe('text/html; charset=utf-8');
    expect(page.headers.get('referrer-policy')).toBe('no-referrer');
    expect(await page.text()).toContain('<title>Jazz waltz</title>');
    const again = await get(`${waltz.id}/`, { 'if-none-match': page.headers.get('etag') ?? '' });
    expect(again.status).toBe(304);
    const pack = (await (await get(`${swing.id}/pack.json`)).json()) as Record<string, unknown>;
    expect(pack).toMatchObject({
      id: swing.id,
      isPrivate: true,
    });
    await set(2, [[swing.id, SWING]]);
    expect((await get(`${waltz.id}/`)).headers.get('location')).toContain(`/${swing.id}/`);
    await set(3, []);
    expect(await (await get('.')).text()).toContain('Nothing has been set for you yet.');
  });

  it('[SE6501] has the worker of the link at the link itself, and none where it was taken back', async () => {
    const { server, made, get, waltz, set } = await aWeek();
    const worker = await get('sw.js');
    expect(worker.headers.get('content-type')).toBe('text/javascript; charset=utf-8');
    // standard: W3C Service Workers, a worker stands for the folder that its script lies in
    expect(await worker.text()).toBe(await (await get(`${waltz.id}/link.js`)).text());
    await set(2, []);
    expect((await get('sw.js')).headers.get('content-type')).not.toContain('javascript');
    await send(server, 'DELETE', `/api/links/${made.link.id}`);
    expect((await get('sw.js')).status).toBe(404);
  });

  it('[SE704] tells the student what the teacher passed, and lets nobody pass themselves', async () => {
    const { server, id, get, made } = await aWeek();
    const pass = JSON.stringify({
      id: 'teacher 1',
      heardBy: 'teacher',
      startedAt: '2026-11-25T18:30:00+01:00',
    });
    const own = JSON.stringify({ id: 'phone 1', heardBy: 'teacher', startedAt: '2026-11-25T18:30:00+01:00' });
    const added = await fetch(new URL('log', made.address), {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ version: 1, rows: [own] }),
    });
    expect(await added.json()).toEqual({ added: 0 });
    await send(server, 'POST', `/api/students/${id}/log`, { version: 1, rows: [pass] });
    expect(((await (await get('week.json')).json()) as Week).passes).toEqual([pass]);
    // whoever was passed has not played for that
    expect(await rosterOf(server)).toMatchObject([{ rows: 1, lastPlayedAt: null }]);
  });

  it('[SE462] opens nothing else, and nothing once it was taken back', async () => {
    const { server, made, get, swing, id } = await aWeek();
    const climbing = [
      '..%2f..%2fapi%2flessons',
      `${swing.id}/..%2f..%2f..%2fapi%2flessons`,
      `${swing.id}/none.js`,
    ];
    for (const path of climbing) {
      const text = await (await get(path)).text();
      expect([path, text.includes('revision')]).toEqual([path, false]);
    }
    const links = `/api/students/${id}/links`;
    expect((await send(server, 'GET', links)).body).toMatchObject([{ id: made.link.id }]);
    const second = (await send(server, 'POST', links)).body as MadeLink;
    expect((await send(server, 'DELETE', `/api/links/${made.link.id}`)).status).toBe(204);
    expect((await send(server, 'DELETE', `/api/links/${made.link.id}`)).status).toBe(404);
    const gone = await get('.', { 'accept-language': 'de' });
    expect([gone.status, await gone.text()]).toEqual([404, expect.stringContaining('öffnet nichts mehr')]);
    for (const path of ['week.json', `${swing.id}/`, `${swing.id}/pack.json`])
      expect((await get(path)).status).toBe(404);
    const { pathname } = new URL(second.address);
    expect((await send(server, 'GET', `${pathname}week.json`)).status).toBe(200);
    await send(server, 'DELETE', `/api/students/${id}`);
    expect((await send(server, 'GET', `${pathname}week.json`)).status).toBe(404);
  });

  it('[SE463] adds what the page sends, once', async () => {
    const { server, made, id, swing } = await aWeek();
    const row = JSON.stringify({
      id: 'phone 1',
      startedAt: '2026-11-25T18:30:00+01:00',
      lesson: swing.id,
      loops: [],
    });
    const body = { version: 1, rows: [row] };
    const path = `${new URL(made.address).pathname}log`;
    expect(await send(server, 'POST', path, body)).toEqual({ status: 200, body: { added: 1 } });
    expect(await send(server, 'POST', path, body)).toEqual({ status: 200, body: { added: 0 } });
    const log = (await send(server, 'GET', `/api/students/${id}/log`)).body as LogPage;
    expect(log.rows.map(({ text }) => text)).toEqual([row]);
    const [{ usedAt } = { usedAt: null }] = (await send(server, 'GET', `/api/students/${id}/links`)).body as [
      MadeLink['link'],
    ];
    expect(Date.parse(usedAt ?? '')).toBeGreaterThan(Date.now() - 60_000);
  });

  it('[SE464] lets whoever tries links wait, and keeps no secret', async () => {
    const { server, dataDir, made, get } = await aWeek();
    const token = new URL(made.address).pathname.split('/')[2] ?? '';
    const kept = readdirSync(dataDir).map((file) => readFileSync(join(dataDir, file), 'latin1'));
    expect(kept.join('').includes(token)).toBe(false);
    const tried: number[] = [];
    for (let n = 0; n < 34; n += 1) {
      // one character at least differs, whatever the token ends on
      const last = token.at(-3) === 'a' ? 'b' : 'a';
      const other = `${token.slice(0, -3)}${last}${String(n).padStart(2, '0')}`;
      tried.push((await send(server, 'GET', `/practice/${other}/week.json`)).status);
    }
    expect(tried).toEqual([
      ...Array.from({ length: 30 }, () => 404),
      ...Array.from({ length: 4 }, () => 429),
    ]);
    expect((await get('.')).status).toBe(429);
  });
});
