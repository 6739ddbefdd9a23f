import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { HistoryStep, SaveRequest, StoredLesson } from '@shedbook/routes';
import type { Page } from 'playwright-core';
import { expect, it, onTestFinished } from 'vitest';
import { keptText, openWindow, settled, sharedBrowser } from '../../../../internal/testing/browser.ts';

const browser = await sharedBrowser();

interface Running {
  readonly process: ChildProcess;
  readonly url: string;
}

/** The server in a process of its own, killed when the test ends. */
async function start(data: string, port: string): Promise<Running> {
  const args = ['apps/server/dist/main.js', '--port', port, '--data', data, '--demo', 'demo', '--no-open'];
  const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'inherit'] });
  onTestFinished(() => void child.kill('SIGKILL'));
  const [line] = (await once(child.stdout, 'data')) as [Buffer];
  return { process: child, url: line.toString().trim().replace('The desk is at ', '') };
}

/** Texts that the server has said it keeps, as they come. */
function watchAcknowledged(page: Page): readonly string[] {
  const texts: string[] = [];
  page.on('response', (response) => {
    const request = response.request();
    if (request.method() === 'PUT' && response.ok()) texts.push((request.postDataJSON() as SaveRequest).text);
  });
  return texts;
}

async function strike(page: Page, keys: string): Promise<void> {
  for (const key of keys) await page.keyboard.press(key === ' ' ? 'ArrowRight' : key);
}

/** Every text of a lesson's history. */
async function historyOf(page: Page): Promise<readonly string[]> {
  const id = /\/lesson\/([\w-]+)/.exec(page.url())?.[1];
  const read = async (path: string) => (await fetch(new URL(`/api/lessons/${id}${path}`, page.url()))).json();
  const { lastStep } = (await read('')) as StoredLesson;
  const steps = Array.from({ length: lastStep + 1 }, (_, step) => read(`/steps/${step}`));
  return ((await Promise.all(steps)) as readonly HistoryStep[]).map((step) => step.text);
}

it('[ST36] loses no edit when the server is killed while somebody writes, and goes on when it is back', async () => {
  const data = mkdtempSync(join(tmpdir(), 'shedbook-killed-'));
  onTestFinished(() => rmSync(data, { recursive: true, force: true }));
  const first = await start(data, '0');
  const page = await openWindow(browser, first.url, { viewport: { width: 1280, height: 900 } });
  const acknowledged = watchAcknowledged(page);
  await page.getByRole('link', { name: 'Open First swing' }).click();
  await page.locator('[data-slot]').first().click();
  await settled(page);
  await strike(page, 'x g ');
  await expect.poll(() => acknowledged.length).toBeGreaterThanOrEqual(3);
  const writing = strike(page, 'x x g x a x x g x');
  first.process.kill('SIGKILL');
  await writing;
  await strike(page, ' g');
  await page.locator('[data-part="keeping"][data-keeping="unreachable"]').waitFor();
  const before = [...acknowledged];
  await page.route('**/api/lessons/*', (route) =>
    route.request().method() === 'PUT' ? route.abort() : route.continue(),
  );
  await start(data, new URL(first.url).port);
  // definition: what was acknowledged before the process died is in the store that was left
  expect(await historyOf(page)).toEqual(expect.arrayContaining(before));
  await page.unroute('**/api/lessons/*');
  await settled(page);
  const written = await page.locator('input[spellcheck="false"]').inputValue();
  expect(await keptText(page)).toContain(written);
  expect(await historyOf(page)).toEqual(expect.arrayContaining([...acknowledged]));
  await page.reload();
  await page.locator('[data-part="line-editor"]').first().waitFor();
  expect(await page.locator('input[spellcheck="false"]').inputValue()).toBe(written);
});
