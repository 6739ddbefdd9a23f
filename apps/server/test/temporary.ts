/** For tests: a folder that is gone afterwards, and a server in it. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { RosterPage, StoredLesson, StoredStudent } from '@shedbook/routes';
import { afterAll, beforeAll, onTestFinished } from 'vitest';
import { sharedMakers } from '../../../internal/testing/makers.ts';
import { type RunningServer, type StartOptions, startServer } from '../src/start.ts';

/** A new empty folder, removed when the test ends. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'shedbook-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** A server on a free port with a store of its own, closed when the test ends. */
export async function startTestServer(options: StartOptions = {}): Promise<RunningServer> {
  const server = await startServer({
    port: 0,
    dataDir: temporaryFolder(),
    makers: sharedMakers,
    ...options,
  });
  onTestFinished(() => server.close());
  return server;
}

/**
 * A server for every test of a file, where none minds what others put into its store: its kit is made once.
 * @returns the server, to be asked for within a test
 */
export function sharedTestServer(): () => RunningServer {
  const folder = mkdtempSync(join(tmpdir(), 'shedbook-'));
  let server: RunningServer | null = null;
  beforeAll(async () => {
    server = await startServer({ port: 0, dataDir: folder, makers: sharedMakers });
  });
  afterAll(async () => {
    await server?.close();
    rmSync(folder, { recursive: true, force: true });
  });
  return () => {
    if (!server) throw new Error('the server starts before the first test');
    return server;
  };
}

/** Sends JSON and reads JSON. */
export async function send(
  server: Pick<RunningServer, 'url'>,
  method: string,
  path: string,
  body?: unknown,
): Promise<{ readonly status: number; readonly body: unknown }> {
  const response = await fetch(new URL(path, server.url), {
    method,
    ...(body === undefined
      ? {}
      : { body: JSON.stringify(body), headers: { 'content-type': 'application/json' } }),
  });
  const text = await response.text();
  return { status: response.status, body: text === '' ? null : JSON.parse(text) };
}

/** Who is on the roster, where all of them fit on one part of it. */
export async function rosterOf(server: Pick<RunningServer, 'url'>): Promise<readonly StoredStudent[]> {
  return ((await send(server, 'GET', '/api/students')).body as RosterPage).students;
}

/** Makes a lesson through the server. */
export async function createLesson(server: Pick<RunningServer, 'url'>, text: string): Promise<StoredLesson> {
  return (await send(server, 'POST', '/api/lessons', { text })).body as StoredLesson;
}
