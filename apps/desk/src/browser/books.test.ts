import { readFile } from 'node:fs/promises';
import type { StoredBook } from '@shedbook/routes';
import { expect, it } from 'vitest';
import { findings } from '../../../../internal/testing/axe.ts';
import { openWindow, sharedBrowser, startDesk } from '../../../../internal/testing/browser.ts';
import { readPdf } from '../../../../internal/testing/pdf.ts';

const browser = await sharedBrowser();

it('[ST5200] [ST6202] [ST6204] a book is made, put in order, kept, printed, lacks what was thrown away, and comes back from the bin', async () => {
  const { url } = await startDesk();
  const page = await openWindow(browser, url);
  const kept = async () => (await (await fetch(new URL('api/books', url))).json()) as readonly StoredBook[];
  await page.getByRole('button', { name: 'Books', exact: true }).click();
  await page.getByRole('button', { name: 'New book' }).click();
  const title = page.getByLabel('Title of the book');
  await title.fill('The first year');
  await title.press('Enter');
  for (const each of ['First swing', 'Jazz waltz', 'Shuffle'])
    await page.getByRole('button', { name: `Put in “${each}”` }).click();
  const lines = page.locator('[data-part="book"] ol li > span:nth-child(2)');
  const names = async () =>
    (await lines.allInnerTexts()).map((line) => line.replaceAll(/[\d\n]+/g, ' ').trim());
  await expect.poll(names).toEqual(['First swing', 'Jazz waltz', 'Shuffle']);
  // pressed again in the very moment in which the first move is known to be kept
  await page.evaluate(() => {
    const press = () => {
      const button = document.querySelector<HTMLElement>('[aria-label="“Shuffle” one place earlier"]');
      button?.focus();
      button?.click();
    };
    const state = document.querySelector('[data-part="book"] [role="status"]');
    const watch = new MutationObserver(() => {
      if (state?.textContent !== 'Kept') return;
      watch.disconnect();
      press();
    });
    if (state) watch.observe(state, { subtree: true, characterData: true, childList: true });
    press();
  });
  await expect.poll(names).toEqual(['Shuffle', 'First swing', 'Jazz waltz']);
  // the focus goes with what was moved, or to the neighbour where it goes no further
  const focused = () => page.evaluate(() => document.activeElement?.getAttribute('aria-label'));
  await expect.poll(focused).toBe('“Shuffle” one place later');
  await page.getByRole('button', { name: 'Take “First swing” out of the book' }).click();
  await expect.poll(names).toEqual(['Shuffle', 'Jazz waltz']);
  await page.getByRole('button', { name: 'Put it back' }).click();
  await expect.poll(async () => (await kept())[0]?.chapters.length).toBe(3);
  await page.reload();
  await expect.poll(names).toEqual(['Shuffle', 'First swing', 'Jazz waltz']);
  // library: axe-core 4.14, every rule that it runs by default, those about colour in both schemes
  expect(await findings(page)).toEqual([]);
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as PDF' }).click();
  const file = await download;
  expect(file.suggestedFilename()).toBe('the-first-year.pdf');
  // library: pdf.js 5.4
  expect((await readPdf(new Uint8Array(await readFile(await file.path())))).title).toBe('The first year');
  const [book] = await kept();
  await fetch(new URL(`api/lessons/${book?.chapters[1]?.lesson}`, url), { method: 'DELETE' });
  await page.reload();
  await page.getByText('Take out what is no longer on the desk first.').waitFor();
  expect(await page.getByRole('button', { name: 'Save as PDF' }).isDisabled()).toBe(true);
  await page.getByRole('button', { name: /^Take “a lesson that is no longer/ }).click();
  await expect.poll(() => page.getByRole('button', { name: 'Save as PDF' }).isDisabled()).toBe(false);
  await page.getByRole('button', { name: 'Put in “Swing, limb by limb”' }).click();
  await page.getByRole('button', { name: 'Sections of “Swing, limb by limb” in the book' }).click();
  await page.getByLabel('Feathering', { exact: true }).click();
  const sections = async () => (await kept())[0]?.chapters[2]?.sections;
  await expect.poll(sections).toEqual(['Each limb, and why', 'Side stick on 4', 'Comping', 'Phrases']);
  expect(await findings(page)).toEqual([]);
  const remove = page.getByRole('button', { name: 'Delete the book' });
  await remove.click();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect.poll(async () => (await kept())[0]?.chapters.length).toBe(3);
  await remove.click();
  await page.getByText('No book yet.').waitFor();
  await page.getByRole('button', { name: 'All lessons' }).click();
  await page.getByRole('button', { name: 'Bin', exact: true }).click();
  await page.getByRole('region', { name: 'Books' }).getByRole('button', { name: /Bring/ }).click();
  await expect.poll(async () => (await kept())[0]?.title).toBe('The first year');
});
