import { expect, it } from 'vitest';
import { openView, sharedBrowser } from '../../../../internal/testing/browser.ts';

const browser = await sharedBrowser();

it('[ST1500] opens every menu and view while the server is gone, and what it lacks as soon as it is back', async () => {
  const page = await openView(browser, 'First swing', 'page', { viewport: { width: 390, height: 844 } });
  const loaded = () =>
    page.evaluate(() =>
      performance
        .getEntriesByType('resource')
        .map(({ name }) => name)
        .join(' '),
    );
  for (const part of ['pop-over-opened', 'sound-form', 'groove-view', 'rearranging-acts', 'students-screen'])
    await expect.poll(loaded, { timeout: 30_000 }).toContain(part);
  await page.context().setOffline(true);
  await page.getByRole('button', { name: 'More sound settings' }).click();
  await page.getByRole('dialog').getByText('2 and 4').waitFor();
  await page.keyboard.press('Escape');
  await page.getByRole('link', { name: 'Groove', exact: true }).click();
  await page.getByText('All limbs together').waitFor();

  // nobody was at leisure: the window is new and busy, and the server goes
  await page.context().setOffline(false);
  await page.addInitScript(() => Object.assign(window, { requestIdleCallback: () => 0 }));
  await page.reload();
  await page.getByText('All limbs together').waitFor();
  await page.context().setOffline(true);
  await page.getByRole('link', { name: 'Lesson room', exact: true }).click();
  expect(await page.locator('[data-part="room"]').count()).toBe(0);
  await page.context().setOffline(false);
  await page.locator('[data-part="room"]').waitFor();
});
