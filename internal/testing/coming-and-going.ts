/** For browser tests of what happens while the desk is not there. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type RunningServer, startServer } from '@shedbook/server';
import { onTestFinished } from 'vitest';
import { sharedMakers } from './makers.ts';

/** A desk that goes and comes back at the same address, with its store; both are gone when the test ends. */
export function comingAndGoing() {
  const dataDir = mkdtempSync(join(tmpdir(), 'shedbook-link-'));
  let server: RunningServer | null = null;
  let url = '';
  const stop = async () => {
    await server?.close();
    server = null;
  };
  onTestFinished(async () => {
    await stop();
    rmSync(dataDir, { recursive: true, force: true });
  });
  const start = async () => {
    const port = url === '' ? 0 : Number(new URL(url).port);
    server = await startServer({ port, dataDir, makers: sharedMakers });
    url = server.url;
  };
  const ask = async <Answer>(method: string, path: string, body?: unknown): Promise<Answer> => {
    const json = { 'content-type': 'application/json' };
    const sent = body === undefined ? {} : { body: JSON.stringify(body), headers: json };
    const text = await (await fetch(new URL(path, url), { method, ...sent })).text();
    return (text === '' ? null : JSON.parse(text)) as Answer;
  };
  return { start, stop, ask, port: () => Number(new URL(url).port) };
}
