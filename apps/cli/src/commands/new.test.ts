import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { STARTER_NAMES } from '@shedbook/core';
import { expect, it, onTestFinished } from 'vitest';
import { runProgram } from '../program.ts';

async function run(...args: string[]) {
  const lines: string[] = [];
  const put = (line: string) => void lines.push(line);
  const status = await runProgram(args, { say: put, warn: put, progress: () => {} });
  return { status, said: lines.join('\n') };
}

it('[CL420] says the grooves, and writes each as a lesson in order that it does not write over', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'shedbook-new-'));
  onTestFinished(() => rm(folder, { recursive: true }));
  const { said } = await run('new');
  expect(STARTER_NAMES.filter((name) => !said.includes(name))).toEqual([]);
  const files = STARTER_NAMES.map((name) => join(folder, `${name}.lesson.yaml`));
  for (const [index, name] of STARTER_NAMES.entries()) {
    expect((await run('new', name, '--out', files[index] as string)).status).toBe(0);
  }
  const checked = await run('check', ...files);
  expect(checked.said.split('\n')).toEqual(files.map((file) => `${file}: in order, 1 exercise`));
  expect(await readFile(files[0] as string, 'utf8')).toContain('title: "Swing"');
  const again = await run('new', 'samba', '--out', files[0] as string);
  expect([again.status, again.said]).toEqual([2, expect.stringContaining('already')]);
  const inside = join(files[0] as string, 'inside-a-file.lesson.yaml');
  const none = await run('new', 'samba', '--out', inside);
  expect([none.status, none.said]).toEqual([2, expect.stringContaining(`${inside} cannot be written: `)]);
  expect((await run('new', 'sambba')).said).toContain('samba');
});
