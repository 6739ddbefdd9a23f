import { writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { join } from 'node:path';
import type { Refusal } from '@shedbook/routes';
import { describe, expect, it } from 'vitest';
import { createLesson, send, startTestServer, temporaryFolder } from '../test/temporary.ts';
import { startServer } from './start.ts';

/** `fetch` does not let a caller choose these headers. */
function statusWith(url: string, method: string, headers: Record<string, string>): Promise<number> {
  return new Promise((resolve, reject) => {
    const sent = request(new URL('/api/lessons', url), { method, headers }, (response) => {
      response.resume();
      resolve(response.statusCode ?? 0);
    });
    sent.on('error', reject);
    sent.end();
  });
}

describe('server', () => {
  it('[SE11] listens on loopback and says where', async () => {
    const server = await startTestServer();
    expect(server.url).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/);
    expect(await send(server, 'GET', '/api/lessons')).toEqual({ status: 200, body: [] });
  });

  it('[SE12] answers to its own pages only', async () => {
    const server = await startTestServer();
    const { port } = new URL(server.url);
    expect(await statusWith(server.url, 'GET', { host: `localhost:${port}` })).toBe(200);
    expect(await statusWith(server.url, 'GET', { host: `lessons.example:${port}` })).toBe(403);
    const foreign = { host: `localhost:${port}`, origin: 'http://lessons.example' };
    expect(await statusWith(server.url, 'DELETE', foreign)).toBe(403);
    const otherPort = { host: `localhost:${port}`, origin: 'http://localhost:1' };
    expect(await statusWith(server.url, 'POST', otherPort)).toBe(403);
  });

  it('[SE3] sends the lesson that is kept with a conflict', async () => {
    const server = await startTestServer();
    const lesson = await createLesson(server, 'a');
    const path = `/api/lessons/${lesson.id}`;
    const ours = await send(server, 'PUT', path, { text: 'b', revision: 1, cause: 'edit' });
    expect(ours.status).toBe(200);
    const stale = await send(server, 'PUT', path, { text: 'c', revision: 1, cause: 'edit' });
    expect(stale).toMatchObject({
      status: 409,
      body: { code: 'lesson-changed', values: { kept: { text: 'b', revision: 2 } } },
    });
  });

  it('[SE13] refuses what it cannot read with a code and the places that are wrong', async () => {
    const server = await startTestServer();
    const { id } = await createLesson(server, 'a');
    const wrong = async (method: string, path: string, body?: unknown) => {
      const refused = await send(server, method, path, body);
      expect(refused).toMatchObject({ status: 400, body: { code: 'bad-request' } });
      const { places } = (refused.body as Refusal<'bad-request'>).values;
      return places.map((place) => place.path);
    };
    expect(await wrong('POST', '/api/lessons', { text: 7, more: 'a' })).toEqual(['body.text', 'body']);
    const save = { text: 'b', revision: 1.5, cause: 'whim' };
    expect(await wrong('PUT', `/api/lessons/${id}`, save)).toEqual(['body.revision', 'body.cause']);
    expect(await wrong('GET', `/api/lessons/${id}/steps/first`)).toEqual(['params.step']);
    expect(await wrong('POST', '/api/import?name=a', { text: 'b' })).toEqual(['body']);
    expect(await wrong('GET', '/api/nothing')).toEqual(['url']);
    const missing = await send(server, 'GET', '/api/lessons/none');
    expect(missing).toMatchObject({ status: 404, body: { code: 'no-such-lesson' } });
    const step = await send(server, 'GET', `/api/lessons/${id}/steps/7`);
    expect(step).toMatchObject({ status: 404, body: { code: 'no-such-step' } });
  });

  it('[SE5] deletes and restores over the wire', async () => {
    const server = await startTestServer();
    const lesson = await createLesson(server, 'a');
    expect((await send(server, 'DELETE', `/api/lessons/${lesson.id}`)).status).toBe(204);
    expect((await send(server, 'GET', '/api/lessons')).body).toEqual([]);
    const restored = await send(server, 'POST', `/api/lessons/${lesson.id}/restore`);
    expect(restored).toEqual({ status: 200, body: lesson });
  });

  it('[SE14] says that a port is taken', async () => {
    const { port } = new URL((await startTestServer()).url);
    const second = startServer({ port: Number(port), dataDir: temporaryFolder() });
    await expect(second).rejects.toThrow(`Port ${port} of 127.0.0.1 is taken`);
  });

  it('[SE15] serves the desk at every address that is not a file', async () => {
    const staticDir = temporaryFolder();
    const unbuilt = await startTestServer({ staticDir });
    expect(await (await fetch(unbuilt.url)).text()).toContain('npm run build');
    writeFileSync(join(staticDir, 'index.html'), '<p>the desk</p>');
    const server = await startTestServer({ staticDir });
    for (const path of ['/', '/lesson/1', '/lesson/1/print']) {
      expect(await (await fetch(new URL(path, server.url))).text()).toBe('<p>the desk</p>');
    }
    expect((await fetch(new URL('/missing.js', server.url))).status).toBe(400);
  });
});
