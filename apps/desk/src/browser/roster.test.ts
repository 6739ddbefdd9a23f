import { readFileSync } from 'node:fs';
import { ROSTER_PAGE } from '@shedbook/routes';
import { expect, it } from 'vitest';
import { findings } from '../../../../internal/testing/axe.ts';
import { openWindow, sharedBrowser, startGuardedDesk } from '../../../../internal/testing/browser.ts';

const browser = await sharedBrowser();

const PASSPHRASE = 'brushes on a coated head';
const PHONE = { viewport: { width: 390, height: 844 } };
const NAMES = [...Array.from({ length: ROSTER_PAGE }, (_, n) => `Student ${n}`), 'Kaito', 'Jürgen'];

it('[ST2200] [ST2203] finds a student of many by name and part by part, and keeps the sheet that is open', async () => {
  const url = await startGuardedDesk(PASSPHRASE, 'http://lessons.example');
  const page = await openWindow(browser, `${url}students`, PHONE);
  await page.getByRole('textbox', { name: 'Passphrase' }).fill(PASSPHRASE);
  await page.keyboard.press('Enter');
  await page.getByText('Nobody on the roster yet.').waitFor();
  const add = (name: string) => page.request.post(new URL('/api/students', url).href, { data: { name } });
  for (const name of NAMES.slice(0, ROSTER_PAGE)) await add(name);
  await page.reload();
  const roster = page.locator('[data-part="roster"]');
  await page.getByRole('heading', { name: 'Student 0' }).waitFor();
  // everybody who fits on one part is there at once, and nothing is in the way
  expect(await roster.getByRole('listitem').count()).toBe(ROSTER_PAGE);
  expect(await roster.getByRole('searchbox').count()).toBe(0);
  for (const name of NAMES.slice(ROSTER_PAGE)) await add(name);
  await page.reload();
  await roster.getByRole('button', { name: 'Show 2 more' }).click();
  await roster.getByRole('button', { name: 'Jürgen' }).waitFor();
  expect(await roster.getByRole('button', { name: /^Show/ }).count()).toBe(0);
  const search = roster.getByRole('searchbox', { name: 'Find a student' });
  await search.fill('jurgen');
  await roster.getByRole('status').getByText('1 student').waitFor();
  await page.getByRole('heading', { name: 'Student 0' }).waitFor();
  await search.press('Tab');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'Jürgen' }).waitFor();
  await search.fill('nobody at all');
  await roster.getByText('Nobody has that name.').waitFor();
  await page.getByRole('heading', { name: 'Jürgen' }).waitFor();
  await page.getByRole('button', { name: 'Erase Jürgen for good' }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Erase Jürgen for good' }).click();
  await page.locator('[data-part="receipt"]').getByText('0 recordings (0 MB),').waitFor();
  expect(await findings(page)).toEqual([]);
  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as a text file' }).click();
  const text = readFileSync(await (await saved).path(), 'utf8');
  expect(text.split('\n').slice(0, 4)).toEqual([
    ...[
      'Jürgen is erased.',
      '',
      expect.stringMatching(/^Erased for good on .*2\d{3}/),
      '0 entries of practice,',
    ],
  ]);
});
