import { once } from 'node:events';
import { readdirSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { connect } from 'node:net';
import { join } from 'node:path';
import { type Refusal, ROUTE_NAMES, ROUTES } from '@shedbook/routes';
import { describe, expect, it } from 'vitest';
import { createLesson, send, startTestServer, temporaryFolder } from '../test/temporary.ts';
import { startServer } from './start.ts';

/** `fetch` does not let a caller choose these headers. */
function statusWith(
  url: string,
  method: string,
  headers: Record<string, string>,
  path = '/api/lessons',
): Promise<number> {
  return new Promise((resolve, reject) => {
    const sent = request(new URL(path, url), { method, headers }, (response) => {
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

  it.each(['0.0.0.0', '::', '192.168.1.20', 'shed.example'])(
    '[SE11] does not listen where others reach it before there is a passphrase: %s',
    async (host) => {
      const dataDir = temporaryFolder();
      const started = startServer({ port: 0, host, dataDir });
      await expect(started).rejects.toThrow(`--host ${host}: found no passphrase`);
      expect(readdirSync(dataDir)).toEqual([]);
    },
  );

  it('[SE12] answers to its own pages only, on every route and for every file', async () => {
    const server = await startTestServer();
    const { port } = new URL(server.url);
    const { id } = await createLesson(server, 'title: Kept');
    const asked = [
      ...ROUTE_NAMES.map((name) => ({
        method: ROUTES[name].method,
        path: ROUTES[name].path.replace(':id', id).replace(/:step|:format/, '0'),
      })),
      ...['/', '/lesson/1', '/missing.js', '/api/nothing'].map((path) => ({ method: 'GET', path })),
      { method: 'OPTIONS', path: '/api/lessons' },
    ];
    const own = { host: `localhost:${port}` };
    const foreign = [
      { host: `lessons.example:${port}` },
      { host: `127.0.0.1.lessons.example:${port}` },
      { ...own, origin: 'http://lessons.example' },
      { ...own, origin: 'http://localhost:1' },
      { ...own, origin: `https://localhost:${port}` },
      { ...own, origin: 'null' },
    ];
    for (const { method, path } of asked)
      for (const headers of foreign)
        expect(await statusWith(server.url, method, headers, path), `${method} ${path}`).toBe(403);
    expect((await send(server, 'GET', `/api/lessons/${id}`)).body).toMatchObject({ text: 'title: Kept' });
    expect(await statusWith(server.url, 'GET', own)).toBe(200);
    expect(await statusWith(server.url, 'GET', { ...own, origin: `http://localhost:${port}` })).toBe(200);
  });

  it('[SE47] gives up a request that does not come whole', async () => {
    const server = await startTestServer({ requestTimeoutMs: 400 });
    const { port, hostname } = new URL(server.url);
    const half = ['POST /api/lessons HTTP/1.1\r\nHost: localhost:', 'GET /api/les'];
    const endings = half.map(async (start) => {
      const socket = connect(Number(port), hostname);
      socket.on('error', () => undefined);
      socket.write(start.endsWith(':') ? `${start}${port}\r\nContent-Length: 900\r\n\r\n{"text` : start);
      socket.resume();
      await once(socket, 'close');
    });
    await Promise.all(endings);
    expect((await send(server, 'GET', '/api/lessons')).status).toBe(200);
  });

  it('[SE13] refuses a file of another type to the import, with a code', async () => {
    const server = await startTestServer();
    for (const type of ['text/plain', 'application/xml', 'multipart/form-data; boundary=a', '']) {
      const response = await fetch(new URL('/api/import?name=a.musicxml', server.url), {
        method: 'POST',
        headers: { 'content-type': type },
        body: new Uint8Array([60, 97, 47, 62]),
      });
      expect([type, response.status]).toEqual([type, 400]);
      expect(await response.json()).toMatchObject({ code: 'bad-request' });
    }
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
