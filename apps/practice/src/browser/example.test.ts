import { expect, it } from 'vitest';
import { sharedBrowser } from '../../../../internal/testing/browser.ts';
import { hostHearingPack, openWithDevices } from '../../../../internal/testing/hearing.ts';

const browser = await sharedBrowser();
const host = await hostHearingPack(`title: Shown
tempo: 240
exercises:
  - {pattern: x . . ., example: {times: 2, form: loop}}
  - . x . .
`);

it('[ST2902] one press plays an example, another goes back to practising; an exercise that is none has no such button', async () => {
  const page = await openWithDevices(browser, `${host.url}#1`, {}, { viewport: { width: 390, height: 844 } });
  const button = page.getByRole('button', { name: /Hear the example/ });
  await button.click();
  await page.getByRole('button', { name: 'Stop' }).waitFor();
  expect(await button.getAttribute('aria-pressed')).toBe('true');
  await page.locator('[data-part="form"]').getByText('Example', { exact: true }).waitFor();
  await button.click();
  await page.getByRole('button', { name: 'Play', exact: true }).waitFor();
  await page.locator('[data-part="form"]').getByText('Loop', { exact: true }).waitFor();
  await button.click();
  await page.goto(`${host.url}#2`);
  await page.locator('[data-part="form"]').getByText('Loop', { exact: true }).waitFor();
  expect(await button.count()).toBe(0);
  await page.goto(`${host.url}#/sheet`);
  await page.locator('[data-part="example-sign"]').first().waitFor();
  expect(await page.locator('[data-part="example-sign"]').count()).toBe(1);
});
