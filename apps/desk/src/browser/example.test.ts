import { expect, it } from 'vitest';
import { keptLesson, openView, settled, sharedBrowser } from '../../../../internal/testing/browser.ts';

const browser = await sharedBrowser();

it('[ST2903] an exercise is made an example on the page, with its times and its form, and has its sign there and in the room', async () => {
  const page = await openView(browser, 'First swing', 'page');
  await page.locator('[data-exercise="2"] button').first().click();
  await page.getByText('Dynamics, texts and silence').click();
  await page.getByRole('checkbox', { name: /^Example/ }).click();
  const choice = page.locator('[data-part="example"]');
  await choice.getByRole('button', { name: 'times round first: one less' }).click();
  await choice.getByRole('combobox', { name: 'then in the form' }).selectOption({ label: 'loop' });
  await settled(page);
  expect((await keptLesson(page)).exercises[1]?.example).toEqual({ times: 3, form: 'loop' });
  await page.locator('[data-exercise="2"] [data-part="example-sign"]').waitFor();
  await page.goto(`${page.url()}/room`);
  await page.locator('[data-part="room"]').waitFor();
});
