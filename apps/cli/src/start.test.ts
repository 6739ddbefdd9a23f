/** What is loaded before a command does anything, in the program as it was compiled last. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { COMMAND } from '../../../internal/testing/command.ts';

/** Runs in Node's thread that finds modules: tells each that is asked for, on the error output. */
const TELLING = `
import { writeSync } from 'node:fs';
export async function resolve(specifier, context, next) {
  const found = await next(specifier, context);
  writeSync(2, found.url + '\\n');
  return found;
}`;

const asData = (script: string) => `data:text/javascript,${encodeURIComponent(script)}`;

/** What has {@link TELLING} run. */
const FIRST = `import { register } from 'node:module'; register(${JSON.stringify(asData(TELLING))});`;

it('[CL1900] loads nothing that engraves, sounds or listens where nothing is made of a lesson', () => {
  const data = mkdtempSync(join(tmpdir(), 'shedbook-start-'));
  const args = ['--import', asData(FIRST), COMMAND, 'doctor', '--data', data];
  const { status, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8' });
  rmSync(data, { recursive: true });
  expect(status).toBe(0);
  const rooms = new Set([...stderr.matchAll(/\/packages\/([a-z]+)\/dist\//g)].map(([, room]) => room));
  expect(rooms).toContain('words');
  for (const room of ['engrave', 'exchange', 'sound', 'listen', 'film']) expect(rooms).not.toContain(room);
  // library: the readers and writers of sound files
  expect(stderr).not.toMatch(/node_modules\/(?:mediabunny|verovio|pdfkit|fontkit|spessasynth_core)\//);
});
