import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { findings } from '../../../../internal/testing/axe.ts';
import { sharedBrowser } from '../../../../internal/testing/browser.ts';
import { HEARING_LESSON, makeHearingPack, openWithDevices } from '../../../../internal/testing/hearing.ts';
import { hostFolder, temporaryFolder } from '../../../../internal/testing/practice.ts';

const browser = await sharedBrowser();
const OTHER = HEARING_LESSON.replace('title: Hearing', 'title: Answering').replace('x x.x x x.x', 'x x x x');

it('[ST211] today’s list takes from every lesson that was opened on this host, and plays it on one page', async () => {
  const folder = temporaryFolder();
  await makeHearingPack(HEARING_LESSON, join(folder.path, 'hearing'));
  await makeHearingPack(OTHER, join(folder.path, 'answering'), 'answering');
  const host = await hostFolder(folder.path);
  onTestFinished(async () => {
    await host.stop();
    folder.remove();
  });
  const page = await openWithDevices(browser, `${host.url}hearing/index.html`, {});
  const items = page.locator('[data-part="plan-item"]');
  await items.first().waitFor();
  // definition: with one lesson there is nothing to choose
  expect(await page.locator('[data-part="lessons"]').count()).toBe(0);
  await page.goto(`${host.url}answering/index.html`);
  const lessons = page.locator('[data-part="lessons"]');
  await lessons.waitFor();
  expect(await lessons.locator('label').allTextContents()).toEqual(['Answering', 'Hearing']);
  await page.getByLabel('Minutes I have').selectOption('60');
  const links = items.getByRole('link', { name: 'Practise Hearing, Exercise 1', exact: true });
  await links.first().waitFor();
  // library: axe-core 4.14, every rule that it runs by default
  expect(await findings(page)).toEqual([]);
  await links.first().click();
  await page.waitForURL(/answering\/index\.html#hearing\/1$/);
  await page.locator('[data-part="lesson"]', { hasText: 'Hearing' }).waitFor();
  // A tile of the other pack, drawn on this page.
  await page.locator('[data-part="picture"] g path').first().waitFor({ state: 'attached' });
  await page.getByRole('button', { name: 'Next exercise' }).click();
  await page.waitForURL(/#hearing\/2$/);
  await page.getByRole('link', { name: 'The sheet' }).click();
  await lessons.getByText('Hearing').click();
  await links.first().waitFor({ state: 'detached' });
});
