import { expect, it } from 'vitest';
import { findings } from '../../../../internal/testing/axe.ts';
import { openWindow, sharedBrowser, startDesk } from '../../../../internal/testing/browser.ts';
import { hostHearingPack, openWithDevices } from '../../../../internal/testing/hearing.ts';

const browser = await sharedBrowser();
const host = await hostHearingPack();

it('[ST2703] tries a device on the pack’s page: sound, clocks, microphone, storage, versions, in one picture', async () => {
  const page = await openWithDevices(browser, `${host.url}#`);
  await page.getByRole('link', { name: 'Try the sound of this device' }).click();
  await page.getByRole('button', { name: 'Try the sound' }).click();
  const value = (row: string) => page.locator(`[data-row="${row}"] dd`).textContent();
  await page.locator('[data-part="check-clocks"]').waitFor();
  expect(await value('plays')).toBe('everything plays');
  // definition: a bar of four beats lasts two seconds, two strokes a beat; strokes are given out ahead of their time
  expect(Number(await value('strokes'))).toBeGreaterThanOrEqual(6);
  expect(await value('rate')).toBe('44100');
  expect(await value('browser')).toBe(await page.evaluate(() => navigator.userAgent));
  await page.getByRole('button', { name: 'Try the microphone, too' }).click();
  await page.locator('[data-part="check-microphone"]').waitFor();
  // standard: Media Capture and Streams: a track of a destination node has no such settings
  expect(await value('echo')).toBe('not told');
  expect(await findings(page)).toEqual([]);
  const waiting = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the picture' }).click();
  const chunks = [];
  for await (const chunk of await (await waiting).createReadStream()) chunks.push(chunk as Buffer);
  // standard: ISO/IEC 15948, 5.2: PNG file signature
  expect(Buffer.concat(chunks).subarray(0, 8)).toEqual(Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'));
});

it('[ST2703] says it where the device changes what the microphone hears', async () => {
  const page = await openWithDevices(browser, `${host.url}#sound`);
  await page.evaluate(() => {
    MediaStreamTrack.prototype.getSettings = () => ({ echoCancellation: true, autoGainControl: false });
  });
  await page.getByRole('button', { name: 'Try the sound' }).click();
  await page.getByRole('button', { name: 'Try the microphone, too' }).click();
  await page.getByText('This microphone is changed for speech by the device').waitFor();
  expect(await page.locator('[data-row="echo"] dd').textContent()).toBe('yes');
  expect(await page.locator('[data-row="gain"] dd').textContent()).toBe('no');
});

it('[ST2703] tries a device from the desk’s server, in German, without signing in', async () => {
  const { url } = await startDesk();
  const page = await openWindow(browser, new URL('/sound', url).href, { locale: 'de' });
  await page.getByRole('button', { name: 'Den Ton probieren' }).click();
  await page.locator('[data-part="check-clocks"]').waitFor();
  expect(await page.locator('[data-row="plays"] dd').textContent()).toBe('alles spielt');
});
