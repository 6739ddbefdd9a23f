import { expect, it, onTestFinished } from 'vitest';
import { openWindow, sharedBrowser } from '../../../../internal/testing/browser.ts';
import {
  buildPack,
  hostFolder,
  PRACTICE_LESSON,
  temporaryFolder,
} from '../../../../internal/testing/practice.ts';
import { shiftsOf } from '../../../../internal/testing/shifts.ts';

const browser = await sharedBrowser();

/** A lesson whose teacher wrote something above its exercises. */
const WRITTEN = PRACTICE_LESSON.replace(
  'by:',
  'text: The *ride* carries the time, so that the rest may rest on it.\nby:',
);

it('[ST3900] leaves what can be pressed where it is while the rest of the page comes', async () => {
  const folder = temporaryFolder();
  const host = await hostFolder(buildPack(WRITTEN, folder.path));
  onTestFinished(async () => {
    await host.stop();
    folder.remove();
  });
  const page = await openWindow(browser, 'about:blank', { viewport: { width: 390, height: 844 } });
  // source: Layout Instability (W3C): nothing that was seen has moved where no shift is reported
  expect(await shiftsOf(page, host.url, 'button')).toEqual([]);
});
