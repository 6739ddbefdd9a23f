import { expect, it } from 'vitest';
import {
  keptLesson,
  settled,
  sharedBrowser,
  sharedDesk,
  turnTo,
} from '../../../../internal/testing/browser.ts';

const show = sharedDesk(await sharedBrowser());

it('[ST2100] how a limb plays is chosen in the groove, and shown there and in the lesson room', async () => {
  const page = await show('Swing, limb by limb', 'groove');
  const bass = page.locator('[data-voice="bass"]').first();
  await bass.getByText('heel down').waitFor();
  await page
    .getByRole('group', { name: /^bass drum:/ })
    .locator('[data-slot="0 0 0"]')
    .click();
  const choice = page.locator('[data-part="how-choice"]').first();
  await choice.getByRole('combobox', { name: 'Heel' }).selectOption({ label: 'heel up' });
  const own = choice.getByRole('textbox', { name: 'In your own words' });
  await own.fill('the knee leads,  heel down, lightly');
  await own.press('Tab');
  await settled(page);
  await bass.getByText('heel up, the knee leads, lightly').waitFor();
  expect((await keptLesson(page)).how.bass).toEqual(['heel up', 'the knee leads', 'lightly']);
  await turnTo(page, 'room');
  const said = page.locator('[data-part="room"] [data-part="how"]');
  await said.getByText('bass drum: heel up, the knee leads, lightly').waitFor();
  // The sign stands beside its word, drawn, and is not read out
  const sign = said.locator('[data-sign="heel up"]').last();
  // standard: ISO 9241-303: 20 minutes of arc at 2 m are 11.6 mm; the signs stand beside words, at half of that and more
  expect((await sign.boundingBox())?.height ?? 0).toBeGreaterThan(22);
  expect(await sign.getAttribute('aria-hidden')).toBe('true');
});
