import { createRequire } from 'node:module';
import { gzipSync } from 'node:zlib';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { launch, openWindow, startDesk } from '../testing/browser.ts';

const AXE = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

let browser: Browser;

beforeAll(async () => {
  browser = await launch();
});

afterAll(() => browser.close());

/** What axe finds: rule and element. */
async function findings(page: Page): Promise<readonly string[]> {
  await page.addScriptTag({ path: AXE });
  const { violations } = await page.evaluate(() =>
    (globalThis as never as { axe: { run: () => Promise<{ violations: unknown }> } }).axe.run(),
  );
  return (violations as { id: string; nodes: { html: string }[] }[]).flatMap(({ id, nodes }) =>
    nodes.map((node) => `${id}: ${node.html.slice(0, 160)}`),
  );
}

it.each([
  ['light', 1440, 900],
  ['dark', 1440, 900],
  ['light', 390, 844],
  ['dark', 390, 844],
] as const)('[ST26] axe finds nothing on any screen: %s, %i wide', async (colorScheme, width, height) => {
  const { url } = await startDesk();
  const page = await openWindow(browser, url, { bypassCSP: true, colorScheme, viewport: { width, height } });
  await page.locator('.lesson-card').nth(4).waitFor();
  // library: axe-core 4.14, every rule that it runs by default
  expect(await findings(page)).toEqual([]);
  const lesson = await page.getByRole('link', { name: 'Open First swing' }).getAttribute('href');
  for (const view of ['', '/groove', '/compose', '/text', '/print', '/room']) {
    await page.goto(new URL(`${lesson}${view}`, url).href);
    await page.locator('main, .room').first().waitFor();
    await page.waitForLoadState('networkidle');
    expect(await findings(page), view).toEqual([]);
  }
});

it('[ST27] loads at most 350 kB before anything is engraved or heard', async () => {
  const { url } = await startDesk();
  const sizes = new Map<string, number>();
  const page = await openWindow(browser, 'about:blank');
  page.on('response', async (response) => {
    if (!response.url().startsWith(url) || response.url().includes('/api/')) return;
    const body = await response.body().catch(() => Buffer.alloc(0));
    const isText = /\.(js|css|svg)$|\/$/.test(new URL(response.url()).pathname);
    sizes.set(response.url(), isText ? gzipSync(body).length : body.length);
  });
  await page.goto(url);
  await page.locator('.lesson-card').nth(4).waitFor();
  await page.getByRole('link', { name: 'Open First swing' }).click();
  await page.locator('.line-editor').first().waitFor();
  await page.waitForLoadState('networkidle');
  const total = [...sizes.values()].reduce((sum, size) => sum + size, 0);
  expect(sizes.size).toBeGreaterThan(3);
  // definition: the goal of the studio's first download, in bytes
  expect(total, JSON.stringify([...sizes])).toBeLessThanOrEqual(350_000);
});
