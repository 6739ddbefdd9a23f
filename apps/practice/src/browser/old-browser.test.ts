import { pathToFileURL } from 'node:url';
import type { Page } from 'playwright-core';
import { expect, it, onTestFinished } from 'vitest';
import { findings } from '../../../../internal/testing/axe.ts';
import { openWindow, sharedBrowser, startDesk } from '../../../../internal/testing/browser.ts';
import { makeHearingPack } from '../../../../internal/testing/hearing.ts';
import { hostFolder, temporaryFolder } from '../../../../internal/testing/practice.ts';

const browser = await sharedBrowser();

/** A window of a browser that does not know what came in 2023; what its pages refuse to load is listed. */
async function openOld(url: string): Promise<{ readonly page: Page; readonly refused: readonly string[] }> {
  const page = await openWindow(browser, 'about:blank');
  const refused: string[] = [];
  page.on('console', (message) => message.type() === 'error' && refused.push(message.text()));
  // documentation: CSS.supports() says false of what a browser does not know (CSS Conditional Rules Level 3)
  await page.addInitScript(() => Object.assign(CSS, { supports: () => false }));
  await page.goto(url);
  return { page, refused };
}

async function packFolder(): Promise<string> {
  const folder = temporaryFolder();
  onTestFinished(() => folder.remove());
  await makeHearingPack('title: Old\nexercises: [x . x .]\n', folder.path);
  return folder.path;
}

const headings = (page: Page) => page.locator('h1').allTextContents();

it('[ST2700] an older browser says in both languages what is needed, on the pack’s page', async () => {
  const host = await hostFolder(await packFolder());
  onTestFinished(() => host.stop());
  const { page, refused } = await openOld(host.url);
  expect(await headings(page)).toEqual([
    'This browser is too old for this page',
    'Dieser Browser ist zu alt für diese Seite',
  ]);
  expect(await page.locator('div[lang="en"]').textContent()).toMatch(/Chrome or Edge 111, .*Safari 16\.4/);
  expect(await page.locator('a').first().getAttribute('href')).toBe('./files/sheet.pdf');
  expect(await findings(page)).toEqual([]);
  expect(refused).toEqual([]);
});

it('[ST2700] an older browser says it on the desk, too, whose policy lets it speak', async () => {
  const { url } = await startDesk();
  const { page, refused } = await openOld(url);
  expect((await headings(page))[0]).toBe('This browser is too old for this page');
  expect(refused).toEqual([]);
});

it('[ST2700] a page that was opened out of a file says how to go on', async () => {
  const page = await openWindow(browser, pathToFileURL(`${await packFolder()}/index.html`).href);
  expect(await headings(page)).toEqual([
    'This page has to be opened from the web',
    'Diese Seite muss aus dem Netz geöffnet werden',
  ]);
});
