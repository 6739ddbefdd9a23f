import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import type { StoredLesson } from '@shedbook/routes';
import { expect, it, onTestFinished } from 'vitest';
import { createLesson, send, temporaryFolder } from '../test/temporary.ts';

const MAIN = fileURLToPath(new URL('../dist/main.js', import.meta.url));

async function start(dataDir: string): Promise<{ readonly process: ChildProcess; readonly url: string }> {
  const child = spawn(process.execPath, [MAIN, '--port', '0', '--data', dataDir, '--no-open'], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  onTestFinished(() => void child.kill('SIGKILL'));
  const [line] = (await once(child.stdout, 'data')) as [Buffer];
  return { process: child, url: line.toString().trim().replace('The desk is at ', '') };
}

it('[SE7] loses no acknowledged save when it is killed in the middle of saving', async () => {
  const dataDir = temporaryFolder();
  const first = await start(dataDir);
  const lesson = await createLesson(first, '0');
  let acknowledged = 0;
  const saving = (async () => {
    for (let n = 1; ; n += 1) {
      await send(first, 'PUT', `/api/lessons/${lesson.id}`, { text: `${n}`, revision: n, cause: 'edit' });
      acknowledged = n;
    }
  })().catch(() => undefined);
  while (acknowledged < 25) await new Promise((resolve) => setTimeout(resolve, 1));
  first.process.kill('SIGKILL');
  await saving;
  const second = await start(dataDir);
  const kept = (await send(second, 'GET', `/api/lessons/${lesson.id}`)).body as StoredLesson;
  // definition: the last acknowledged text, or the one that was being written when the process died
  expect([acknowledged, acknowledged + 1]).toContain(Number(kept.text));
  expect(kept.revision).toBe(Number(kept.text) + 1);
});
