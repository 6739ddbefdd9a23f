import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
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
  expect(said[0]).toBe(`The desk is at ${url}`);
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

it('[CL31] ends quietly when it is stopped, however often', async () => {
  const data = mkdtempSync(join(tmpdir(), 'shedbook-serve-'));
  const command = fileURLToPath(new URL('../../bin/shedbook.mjs', import.meta.url));
  const args = [command, 'serve', '--port', '0', '--data', data, '--no-open'];
  const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'pipe'] });
  onTestFinished(() => {
    child.kill('SIGKILL');
    rmSync(data, { recursive: true, force: true });
  });
  const complaints: string[] = [];
  child.stderr.on('data', (text: Buffer) => void complaints.push(text.toString()));
  const ended = once(child, 'exit');
  await once(child.stdout, 'data');
  child.kill('SIGINT');
  child.kill('SIGINT');
  expect(await ended).toEqual([0, null]);
  expect(complaints).toEqual([]);
});
