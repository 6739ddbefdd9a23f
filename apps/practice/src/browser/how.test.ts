import { expect, it } from 'vitest';
import { sharedBrowser } from '../../../../internal/testing/browser.ts';
import { hostHearingPack, openWithDevices } from '../../../../internal/testing/hearing.ts';

const browser = await sharedBrowser();
const host = await hostHearingPack(`title: How
groove:
  ride: {pattern: x x.x x x.x, how: 'tip, bow'}
  bass: {pattern: x x x x, level: feathered, how: heel down}
how: {snare: tip}
exercises:
  - x.. ... ... ...
  - {pattern: ... x.. ... ..., how: 'edge, as if it were hot'}
`);

it('[ST2101] words and signs say how each voice is played, for an exercise and for time alone', async () => {
  const page = await openWithDevices(browser, `${host.url}#2`, {}, { viewport: { width: 390, height: 844 } });
  const said = page.locator('[data-part="how"] li');
  await page.getByText('snare: edge, as if it were hot').waitFor();
  expect(await said.allTextContents()).toEqual([
    'snare: edge, as if it were hot',
    'ride: tip, bow',
    'bass drum: heel down',
  ]);
  expect(await page.locator('[data-part="how"] [data-sign]').count()).toBe(4);
});
