import { gzipSync } from 'node:zlib';
import { expect, it } from 'vitest';
import { findings } from '../../../../internal/testing/axe.ts';
import {
  openWindow,
  sharedBrowser,
  startDesk,
  turnTo,
  walkTo,
} from '../../../../internal/testing/browser.ts';

const browser = await sharedBrowser();

it.each([
  [1440, 900, 'en'],
  [390, 844, 'de'],
])('[ST26] axe finds nothing on any screen, light or dark: %i wide', async (width, height, locale) => {
  const { url } = await startDesk();
  const page = await openWindow(browser, url, { locale, viewport: { width, height } });
  await page.locator('[data-part="lesson-card"]').nth(4).waitFor();
  // library: axe-core 4.14, every rule that it runs by default, those about colour in both schemes
  expect(await findings(page)).toEqual([]);
  const lesson = (await page.getByRole('link', { name: /First swing/ }).getAttribute('href')) as string;
  const open = async (path: string) => {
    await walkTo(page, path);
    await page.locator('main').first().waitFor();
    expect(await findings(page), path).toEqual([]);
  };
  await open(lesson);
  for (const view of ['groove', 'compose', 'text', 'print', 'room'] as const) {
    await turnTo(page, view);
    expect(await findings(page), view).toEqual([]);
  }
  for (const screen of ['/students', '/bin']) await open(screen);
});

it('[ST27] loads at most 350 kB before anything is engraved or heard', async () => {
  const { url } = await startDesk();
  const sizes = new Map<string, number>();
  const page = await openWindow(browser, 'about:blank');
  // what comes at leisure ([ST1500]) is nothing that anybody waits for
  await page.addInitScript(() => Object.assign(window, { requestIdleCallback: () => 0 }));
  page.on('response', async (response) => {
    if (!response.url().startsWith(url) || response.url().includes('/api/')) return;
    const body = await response.body().catch(() => Buffer.alloc(0));
    const isText = /\.(js|css|svg)$|\/$/.test(new URL(response.url()).pathname);
    sizes.set(response.url(), isText ? gzipSync(body).length : body.length);
  });
  await page.goto(url);
  await page.locator('[data-part="lesson-card"]').nth(4).waitFor();
  await page.getByRole('link', { name: 'Open First swing' }).click();
  await page.locator('[data-part="line-editor"]').first().waitFor();
  await page.waitForLoadState('networkidle');
  const total = [...sizes.values()].reduce((sum, size) => sum + size, 0);
  expect(sizes.size).toBeGreaterThan(3);
  // definition: the goal of the desk's first download, in bytes
  expect(total, JSON.stringify([...sizes])).toBeLessThanOrEqual(350_000);
});
