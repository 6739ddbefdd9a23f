import { expect, it } from 'vitest';
import { openWindow, settled, sharedBrowser, startDesk } from '../../../../internal/testing/browser.ts';

const browser = await sharedBrowser();

const PHONE = { width: 390, height: 844 } as const;

it('[ST1503] says what it refuses and warns of, names what plays, and opens what is pressed', async () => {
  const { url } = await startDesk();
  const page = await openWindow(browser, url, { viewport: { width: 1440, height: 900 } });
  // the story: the title under the picture did nothing
  const title = page.getByRole('heading', { name: 'First swing' });
  const box = await title.boundingBox();
  if (!box) throw new Error('no title');
  await page.mouse.click(box.x + 5, box.y + 5);
  await page.locator('[data-part="line-editor"]').first().waitFor();

  // the story: a tempo of 10 was refused without a word
  await page.getByRole('spinbutton', { name: 'Tempo' }).fill('10');
  await page.keyboard.press('Enter');
  await page.getByText(/^A tempo from \d+ to \d+\.$/).waitFor();

  // the story: what plays was an exercise that had been deleted
  await page.locator('[data-exercise="24"] [data-part="resting-press"]').click();
  await page.getByText('Exercise 24', { exact: true }).last().waitFor();
  await page.getByRole('button', { name: 'Delete', exact: true }).click();
  const ledge = page.getByRole('region', { name: 'Sound', exact: true });
  await ledge.getByText('Exercise 23').waitFor();

  // the story: the list of keys ran off the screen
  await page.setViewportSize(PHONE);
  await page.getByRole('button', { name: 'Keys' }).click();
  const keys = page.getByRole('dialog', { name: 'Everything from the keyboard' });
  const shown = await keys.boundingBox();
  expect(shown?.y).toBeGreaterThanOrEqual(0);
  expect((shown?.y ?? 0) + (shown?.height ?? 0)).toBeLessThanOrEqual(PHONE.height);
  await keys.getByText('move it by a place').scrollIntoViewIfNeeded();
  await keys.getByRole('button', { name: 'Done' }).click();

  // the story: “no problems” stood beside a warning, and one warning hid the page
  await page.getByRole('link', { name: 'Text', exact: true }).click();
  const area = page.getByRole('textbox', { name: 'Text of the lesson' });
  await area.fill('title: A\nlimbs: {snare: lead hand}\ngroove: {ride: x x x x}\nexercises: [x . . .]\n');
  await page.getByText('1 problem', { exact: true }).waitFor();
  await page.getByText(/^Look at this:/).waitFor();
  expect(await page.getByText('No problems: this is a lesson.').count()).toBe(0);
  await settled(page);
  await page.getByRole('link', { name: 'Page', exact: true }).click();
  await page.locator('[data-part="line-editor"]').first().waitFor();
  expect(await page.locator('[inert] [data-part="line-editor"]').count()).toBe(0);
});
