import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { serve } from './serve.ts';

async function start(port: number) {
  const data = mkdtempSync(join(tmpdir(), 'shedbook-serve-'));
  const said: string[] = [];
  const say = (line: string) => void said.push(line);
  const server = await serve({ port, data, open: false }, { say, warn: say, progress: () => {} });
  onTestFinished(async () => {
    await server.close();
    rmSync(data, { recursive: true, force: true });
  });
  return { url: server.url, said };
}

it('[CL30] serves the demo lessons and says where', async () => {
  const { url, said } = await start(0);
  expect(said[0]).toBe(`The studio is at ${url}`);
  const lessons = (await (await fetch(new URL('/api/lessons', url))).json()) as readonly {
    readonly text: string;
  }[];
  expect(lessons).toHaveLength(5);
  expect((await fetch(url)).headers.get('content-type')).toContain('text/html');
});

it('[CL30] says in words that a port is taken', async () => {
  const { url } = await start(0);
  await expect(start(Number(new URL(url).port))).rejects.toThrow(/Port \d+ of 127\.0\.0\.1 is taken/);
});
