import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdtempSync, openSync, readdirSync, readFileSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { COMMAND } from '../../../../internal/testing/command.ts';
import { DEMO_LESSONS } from '../../../../internal/testing/demo-lessons.ts';

/** The command as it is joined with the server, and everything that it says. */
function serve(port: number) {
  const data = mkdtempSync(join(tmpdir(), 'shedbook-serve-'));
  const args = [COMMAND, 'serve', '--port', `${port}`, '--data', data, '--no-open'];
  const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'pipe'] });
  onTestFinished(() => {
    child.kill('SIGKILL');
    rmSync(data, { recursive: true, force: true });
  });
  const said = { out: '', err: '' };
  child.stdout.on('data', (text: Buffer) => {
    said.out += text;
  });
  child.stderr.on('data', (text: Buffer) => {
    said.err += text;
  });
  return { child, said, ended: once(child, 'close') };
}

async function start() {
  const { child, said, ended } = serve(0);
  await once(child.stdout, 'data');
  const url = /^The desk is at (http:\S+)$/m.exec(said.out)?.[1];
  if (!url) throw new Error(`The desk did not say where it is: ${said.out}`);
  return { child, said, ended, url };
}

it('[CL30] serves the demo lessons and says where', async () => {
  const { url } = await start();
  const lessons = (await (await fetch(new URL('/api/lessons', url))).json()) as readonly {
    readonly text: string;
  }[];
  expect(lessons).toHaveLength(DEMO_LESSONS.length);
  expect((await fetch(url)).headers.get('content-type')).toContain('text/html');
});

it('[CL30] says in words that a port is taken', async () => {
  const { url } = await start();
  const second = serve(Number(new URL(url).port));
  expect(await second.ended).toEqual([2, null]);
  expect(second.said.err).toMatch(/^Port \d+ of 127\.0\.0\.1 is taken/);
});

it('[CL31] ends quietly when it is stopped, however often', async () => {
  const { child, said, ended } = await start();
  child.kill('SIGINT');
  child.kill('SIGINT');
  expect(await ended).toEqual([0, null]);
  expect(said.err).toBe('');
});

it('[CL32] doctor says whether the store is whole, what can be read and what to do', async () => {
  const { said, url, child, ended } = await start();
  const added = await fetch(new URL('/api/lessons', url), {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ text: 'title: Told apart\n' }),
  });
  expect([added.status, said.err]).toEqual([201, '']);
  child.kill('SIGINT');
  await ended;
  const data = child.spawnargs[child.spawnargs.indexOf('--data') + 1] ?? '';
  const doctor = (...args: readonly string[]) =>
    spawnSync(process.execPath, [COMMAND, 'doctor', '--data', data, ...args], { encoding: 'utf8' });
  const whole = doctor();
  expect([whole.status, whole.stderr]).toEqual([0, '']);
  expect(whole.stdout).toContain(`${DEMO_LESSONS.length + 1} lessons and 0 students can be read.`);
  expect(whole.stdout).toContain('Everything is whole.');
  const file = join(data, 'lessons.sqlite');
  for (const name of readdirSync(data)) {
    // wherever it lies: SQLite may keep what a page was before
    for (const { index } of readFileSync(join(data, name), 'latin1').matchAll(/Told apart/g))
      writeSync(openSync(join(data, name), 'r+'), 'Told again', index);
  }
  expect(existsSync(file)).toBe(true);
  const damaged = doctor('--save', join(data, 'saved'), '--language', 'de');
  expect(damaged.status).toBe(1);
  expect(damaged.stdout).toMatch(/^1 Lektion ist nicht mehr lesbar: [\da-f-]{36}\.$/m);
  expect(damaged.stdout).toContain('--save ORDNER');
  expect(readdirSync(join(data, 'saved'))).toHaveLength(DEMO_LESSONS.length);
});
