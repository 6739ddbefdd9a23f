import { readFile } from 'node:fs/promises';
import { unzipSync } from 'fflate';
import { expect, it } from 'vitest';
import {
  keptText,
  openWindow,
  settled,
  sharedBrowser,
  startDesk,
} from '../../../../internal/testing/browser.ts';

const browser = await sharedBrowser();

it('[ST55] hands out the pack from the desk, and keeps the address that is printed', async () => {
  const { url } = await startDesk();
  const page = await openWindow(browser, url, { viewport: { width: 1440, height: 900 } });
  await page.getByRole('button', { name: 'New lesson' }).click();
  await settled(page);
  await page.goto(`${page.url()}/print`);
  const field = page.getByRole('textbox', { name: 'Address of that page' });
  await field.fill('tannery');
  await field.blur();
  await page.getByText('An address begins with https://').waitFor();
  await field.fill('https://tannery.example/first-swing/');
  await field.blur();
  await settled(page);
  await expect.poll(() => keptText(page)).toContain('practicePage: https://tannery.example/first-swing/');
  const download = page.waitForEvent('download', { timeout: 60_000 });
  await page.getByRole('button', { name: 'Take-home pack (ZIP)' }).click();
  const file = await download;
  expect(file.suggestedFilename()).toMatch(/\.zip$/);
  // library: fflate, unzipSync
  const files = unzipSync(new Uint8Array(await readFile(await file.path())));
  const pack = JSON.parse(Buffer.from(files['practice/pack.json'] ?? []).toString('utf8'));
  expect(pack.lesson.practicePage).toBe('https://tannery.example/first-swing/');
  expect(Object.keys(files)).toContain('practice/index.html');
});
