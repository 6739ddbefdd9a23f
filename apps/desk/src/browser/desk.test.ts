import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { openWindow, settled, sharedBrowser, startDesk } from '../../../../internal/testing/browser.ts';
import { DEMO_LESSONS } from '../../../../internal/testing/demo-lessons.ts';

const browser = await sharedBrowser();

const titles = (page: Page) => page.locator('[data-part="lesson-card"] h2').allTextContents();

async function choose(page: Page, lesson: string, action: string): Promise<void> {
  await page.getByRole('button', { name: `More for ${lesson}`, exact: true }).click();
  await page.getByRole('menuitem', { name: action, exact: true }).click();
}

it('[ST1] makes, renames, duplicates, deletes and takes back lessons, and shows the same desk again', async () => {
  const { url } = await startDesk();
  const page = await openWindow(browser, url);
  await page.locator('[data-part="lesson-card"]').nth(5).waitFor();
  await page.getByRole('button', { name: 'New lesson' }).click();
  await settled(page);
  await page.getByRole('button', { name: 'All lessons' }).click();
  await choose(page, 'Untitled lesson', 'Rename');
  await page.getByRole('textbox', { name: 'Title' }).fill('Second swing');
  await page.getByRole('button', { name: 'Done' }).click();
  await page.getByRole('heading', { name: 'Second swing', exact: true }).waitFor();
  await choose(page, 'Second swing', 'Duplicate');
  await page.getByRole('heading', { name: 'Second swing, copy' }).waitFor();
  await choose(page, 'Shuffle', 'Delete');
  await page.getByRole('heading', { name: 'Shuffle' }).waitFor({ state: 'detached' });
  await choose(page, 'Jazz waltz', 'Delete');
  await page.getByRole('heading', { name: 'Jazz waltz' }).waitFor({ state: 'detached' });
  await page.getByRole('button', { name: 'Undo' }).last().click();
  await page.getByRole('heading', { name: 'Jazz waltz' }).waitFor();
  const before = (await titles(page)).toSorted();
  // definition: one more than there were: one new, one doubled, one gone
  expect(before).toHaveLength(DEMO_LESSONS.length + 1);
  expect(before).not.toContain('Shuffle');
  await page.reload();
  await page.locator('[data-part="lesson-card"]').nth(DEMO_LESSONS.length).waitFor();
  expect((await titles(page)).toSorted()).toEqual(before);
});

it('[ST2] lets a lesson file out letter for letter, and takes one in as a new lesson', async () => {
  const { url } = await startDesk();
  const page = await openWindow(browser, url);
  await page.locator('[data-part="lesson-card"]').nth(5).waitFor();
  const download = page.waitForEvent('download');
  await choose(page, 'Shuffle', 'Export lesson file');
  const file = await download;
  expect(file.suggestedFilename()).toMatch(/\.lesson\.yaml$/);
  const text = await readFile(await file.path(), 'utf8');
  expect(text).toBe(await readFile('demo/shuffle.lesson.yaml', 'utf8'));
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Import' }).click();
  const buffer = Buffer.from(text.replace('title: Shuffle', 'title: Shuffle again'));
  await (await chooser).setFiles({ name: 'again.lesson.yaml', mimeType: 'text/yaml', buffer });
  await page.getByRole('heading', { name: 'Shuffle again' }).waitFor();
  expect(await titles(page)).toHaveLength(DEMO_LESSONS.length + 1);
});

it('[ST420] finds a lesson among many, puts it on a shelf and out of the way, and brings it back', async () => {
  const { url } = await startDesk();
  const page = await openWindow(browser, url);
  await page.locator('[data-part="lesson-card"]').nth(5).waitFor();
  await page.getByRole('searchbox', { name: 'Search' }).fill('bossa');
  await page.getByText(`1 of ${DEMO_LESSONS.length}`).waitFor();
  await choose(page, 'Straight-eighth bossa', 'Level and shelves');
  await page.getByRole('textbox', { name: 'New shelf' }).fill('Tuesday');
  await page.keyboard.press('Enter');
  await page.getByRole('checkbox', { name: 'Tuesday' }).waitFor();
  await page.getByRole('button', { name: 'Done' }).click();
  await page.getByRole('button', { name: 'Show all' }).click();
  await choose(page, 'Shuffle', 'Duplicate');
  await page.getByRole('heading', { name: 'Shuffle, copy' }).waitFor();
  const shelf = page.getByRole('combobox', { name: 'Shelf' });
  await shelf.selectOption({ label: 'Alike (2)' });
  await expect.poll(() => titles(page)).toEqual(['Shuffle, copy', 'Shuffle']);
  await choose(page, 'Shuffle, copy', 'Put in the archive');
  await page.getByText('Nothing is found.').waitFor();
  await shelf.selectOption({ label: 'Archive (1)' });
  await expect.poll(() => titles(page)).toEqual(['Shuffle, copy']);
  await shelf.selectOption({ label: 'Tuesday' });
  await expect.poll(() => titles(page)).toEqual(['Straight-eighth bossa']);
  await shelf.selectOption({ label: 'Waltz' });
  await expect.poll(() => titles(page)).toEqual(['Jazz waltz']);
});
