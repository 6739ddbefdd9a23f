import { expect, it } from 'vitest';
import { findings } from '../../../../internal/testing/axe.ts';
import { openView, sharedBrowser } from '../../../../internal/testing/browser.ts';

const browser = await sharedBrowser();

it('[ST1804] says that a screen broke, instead of leaving nothing, and leads back to the desk', async () => {
  const page = await openView(browser, 'First swing', 'page');
  await page.route('**/students-screen-*.js', (route) =>
    route.fulfill({
      contentType: 'text/javascript',
      body: 'export const StudentsScreen = () => { throw new Error("planted"); };',
    }),
  );
  await page.goto(new URL('/students', page.url()).href);
  await page.getByRole('heading', { name: 'This page has broken down' }).waitFor();
  // definition: our own fault is told in words, without a trace of the code
  expect(await page.locator('main').textContent()).not.toMatch(/planted|Error|\.js/);
  expect(await findings(page)).toEqual([]);
  await page.getByRole('button', { name: 'Back to the beginning' }).click();
  await page.getByRole('link', { name: 'First swing' }).first().waitFor();
});
