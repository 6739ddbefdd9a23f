import { expect, it } from 'vitest';
import {
  keptLesson,
  settled,
  sharedBrowser,
  sharedDesk,
  turnTo,
} from '../../../../internal/testing/browser.ts';

const show = sharedDesk(await sharedBrowser());

it('[ST2903] an exercise is made an example on the page, with its times and its form, and has its sign there and in the room', async () => {
  const page = await show('First swing', 'page');
  await page.locator('[data-exercise="2"] button').first().click();
  await page.getByText('Dynamics, texts and silence').click();
  await page.getByRole('checkbox', { name: /^Example/ }).click();
  const choice = page.locator('[data-part="example"]');
  await choice.getByRole('button', { name: 'times round first: one less' }).click();
  await choice.getByRole('combobox', { name: 'then in the form' }).selectOption({ label: 'loop' });
  await settled(page);
  expect((await keptLesson(page)).exercises[1]?.example).toEqual({ times: 3, form: 'loop' });
  await page.locator('[data-exercise="2"] [data-part="example-sign"]').waitFor();
  await turnTo(page, 'room');
  await page.locator('[data-part="room"]').waitFor();
});
