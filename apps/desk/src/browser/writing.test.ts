import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import {
  openWindow,
  settled,
  sharedBrowser,
  sharedDesk,
  startDesk,
} from '../../../../internal/testing/browser.ts';

const browser = await sharedBrowser();
const show = sharedDesk(browser);

async function openLesson(page: Page, title: string): Promise<void> {
  await page.getByRole('link', { name: `Open ${title}` }).click();
  await page.locator('[data-part="line-editor"]').first().waitFor();
}

const patternField = (page: Page) => page.locator('input[spellcheck="false"]');

async function typePattern(page: Page, text: string): Promise<void> {
  await patternField(page).fill(text);
  await patternField(page).blur();
}

it('[ST11] undoes and redoes through the whole history, also after a reload', async () => {
  const page = await show('First swing', 'page');
  const first = await patternField(page).inputValue();
  for (const text of ['x.x ... ... ...', '..x ..x ..x ..x']) {
    await typePattern(page, text);
    await settled(page);
  }
  await page.reload();
  await page.locator('[data-part="line-editor"]').first().waitFor();
  expect(await patternField(page).inputValue()).toBe('..x ..x ..x ..x');
  const undo = page.getByRole('button', { name: 'Undo', exact: true });
  for (const expected of ['x.x ... ... ...', first]) {
    await undo.click();
    await expect.poll(() => patternField(page).inputValue()).toBe(expected);
  }
  expect(await undo.isDisabled()).toBe(true);
  await page.getByRole('button', { name: 'Redo', exact: true }).click();
  await expect.poll(() => patternField(page).inputValue()).toBe('x.x ... ... ...');
});

it('[ST11] undoes by its keys wherever no text is written, a box that was just ticked too', async () => {
  const page = await show('First swing', 'print');
  const box = page.getByRole('checkbox', { name: 'Counts under the notes' });
  const before = await box.isChecked();
  await box.press('Space');
  await expect.poll(() => box.isChecked()).toBe(!before);
  await settled(page);
  await box.press('Control+z');
  await expect.poll(() => box.isChecked()).toBe(before);
});

it('[ST8] says beside the field what is wrong with a pattern text, and does not keep it', async () => {
  const page = await show('First swing', 'page');
  const before = await patternField(page).inputValue();
  await patternField(page).fill('x.. ..y x.x ...');
  const fault = page.locator('[data-part="pencil-box"] [id$="-fault"]');
  expect(await fault.textContent()).toContain('Found "y"; expected one of the marks');
  expect(await patternField(page).getAttribute('aria-invalid')).toBe('true');
  await patternField(page).blur();
  expect(await patternField(page).inputValue()).toBe(before);
  await page.reload();
  await page.locator('[data-part="line-editor"]').first().waitFor();
  expect(await patternField(page).inputValue()).toBe(before);
});

it('[ST3] shows both versions when another window changed the lesson, and loses neither', async () => {
  const one = await show('First swing', 'page');
  const two = await openWindow(browser, one.url(), { viewport: { width: 1440, height: 900 } });
  await two.locator('[data-part="line-editor"]').first().waitFor();
  await two.route('**/api/lessons/*', (route) =>
    route.request().method() === 'GET' ? route.abort() : route.continue(),
  );
  await typePattern(one, 'x.x x.x x.x x.x');
  await settled(one);
  await typePattern(two, '... ... ... x.x');
  const dialog = two.getByRole('alertdialog');
  await dialog.waitFor();
  const versions = dialog.locator('[data-part="version"]');
  expect(await versions.nth(0).textContent()).toContain('... ... ... x.x');
  expect(await versions.nth(1).textContent()).toContain('x.x x.x x.x x.x');
  await two.unroute('**/api/lessons/*');
  await dialog.getByRole('button', { name: 'Go on with this one' }).click();
  await settled(two);
  await two.reload();
  await two.locator('[data-part="line-editor"]').first().waitFor();
  expect(await patternField(two).inputValue()).toBe('... ... ... x.x');
  await two.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect.poll(() => patternField(two).inputValue()).toBe('x.x x.x x.x x.x');
});

it('[ST4] keeps changes while the server cannot be reached, also over a reload', async () => {
  const { url } = await startDesk();
  const page = await openWindow(browser, url, { viewport: { width: 1440, height: 900 } });
  await openLesson(page, 'First swing');
  await settled(page);
  await page.route('**/api/lessons/*', (route) =>
    route.request().method() === 'PUT' ? route.abort() : route.continue(),
  );
  await typePattern(page, '..x x.. ..x x..');
  await page.locator('[data-part="keeping"][data-keeping="unreachable"]').waitFor();
  await page.reload({ waitUntil: 'domcontentloaded' });
  await page.locator('[data-part="line-editor"]').first().waitFor();
  expect(await patternField(page).inputValue()).toBe('..x x.. ..x x..');
  await page.unroute('**/api/lessons/*');
  await settled(page);
  await page.evaluate(() => localStorage.clear());
  await page.reload();
  await page.locator('[data-part="line-editor"]').first().waitFor();
  expect(await patternField(page).inputValue()).toBe('..x x.. ..x x..');
});

it('[ST25] turns exercises in the room by arrow and page keys, and plays with space', async () => {
  const page = await show('First swing', 'room');
  const number = page.locator('[data-part="room-number"] strong');
  await number.waitFor();
  await page.keyboard.press('ArrowRight');
  await expect.poll(() => number.textContent()).toBe('2');
  await page.keyboard.press('PageDown');
  await expect.poll(() => number.textContent()).toBe('3');
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('PageUp');
  await expect.poll(() => number.textContent()).toBe('1');
  await page.keyboard.press('Space');
  await page.getByRole('button', { name: 'Stop' }).waitFor();
  await page.keyboard.press('Space');
  await page.getByRole('button', { name: 'Play' }).waitFor();
});
