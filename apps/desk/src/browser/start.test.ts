import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { openWindow, sharedBrowser } from '../../../../internal/testing/browser.ts';

const browser = await sharedBrowser();

/** The desk as `npm start` runs it, in a group of processes of its own, as a terminal would. */
async function startScript() {
  const data = mkdtempSync(join(tmpdir(), 'shedbook-start-'));
  const args = ['scripts/desk.mjs', '--no-files', '--no-open', '--port', '0', '--data', data];
  const script = spawn(process.execPath, args, { detached: true, stdio: ['ignore', 'pipe', 'pipe'] });
  const group = -(script.pid as number);
  const said: string[] = [];
  const complaints: string[] = [];
  script.stdout.on('data', (text: Buffer) => void said.push(text.toString()));
  script.stderr.on('data', (text: Buffer) => void complaints.push(text.toString()));
  const ended = once(script, 'exit');
  onTestFinished(() => {
    if (script.exitCode === null) process.kill(group, 'SIGKILL');
    rmSync(data, { recursive: true, force: true });
  });
  await expect.poll(() => said.join('')).toContain('Ctrl+C');
  const url = /http:\S+/.exec(said.join(''))?.[0] ?? '';
  return { url, complaints, ended, interrupt: () => process.kill(group, 'SIGINT') };
}

it('[ST31] npm start prints the address of a desk with the demo lessons, and ends quietly with Ctrl+C', async () => {
  const { url, complaints, ended, interrupt } = await startScript();
  // definition: loopback only
  expect(url).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/);
  const page = await openWindow(browser, url);
  await page.locator('[data-part="lesson-card"]').nth(4).waitFor();
  interrupt();
  expect(await ended).toEqual([0, null]);
  expect(complaints).toEqual([]);
});
