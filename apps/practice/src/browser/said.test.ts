import { expect, it, onTestFinished } from 'vitest';
import { findings } from '../../../../internal/testing/axe.ts';
import { sharedBrowser } from '../../../../internal/testing/browser.ts';
import { makeHearingPack, openWithDevices } from '../../../../internal/testing/hearing.ts';
import { hostFolder, temporaryFolder } from '../../../../internal/testing/practice.ts';

const TEXT = `title: Said
groove: {ride: x x x x, bass: x . x .}
exercises:
  - {pattern: x . x ., name: Outside}
sections:
  - heading: Two endings
    text: Keep the *ride* even; see [the sheet](https://example.org/sheet).
    exercises:
      - pattern: x x . . | . . x x | x x x x
        repeats: {bars: 1, endings: [2, 3]}
        dynamics: p | < . . .| f
        above: softly | build
        below: " | | let it ring"
`;

const browser = await sharedBrowser();

it('[ST380] a section’s text, texts over and under bars, dynamics and endings stand on the page of an exercise', async () => {
  const folder = temporaryFolder();
  const host = await hostFolder(await makeHearingPack(TEXT, folder.path));
  onTestFinished(async () => {
    await host.stop();
    folder.remove();
  });
  const page = await openWithDevices(browser, `${host.url}#2`, {});
  await page.locator('[data-part="picture"] g path').first().waitFor({ state: 'attached' });
  expect(await page.locator('[data-part="section"]').textContent()).toBe('Two endings');
  const about = page.locator('[data-part="about"]');
  await about.locator('summary').click();
  expect(await about.locator('em').textContent()).toBe('ride');
  expect(await about.getByRole('link').getAttribute('href')).toBe('https://example.org/sheet');
  const inBar = (bar: number, part: string) =>
    page.locator(`[data-on="exercise"][data-bar="${bar}"] [data-part="${part}"]`);
  expect(await inBar(1, 'above').textContent()).toBe('softly');
  expect(await inBar(3, 'below').textContent()).toBe('let it ring');
  expect([await inBar(1, 'dynamic').textContent(), await inBar(3, 'dynamic').textContent()]).toEqual([
    'p',
    'f',
  ]);
  expect(await inBar(2, 'hairpin').count()).toBe(1);
  expect(await inBar(2, 'ending').textContent()).toBe('1.');
  expect(await inBar(3, 'ending').textContent()).toBe('2.');
  // library: axe-core, every rule that it runs by default
  expect(await findings(page)).toEqual([]);
});
