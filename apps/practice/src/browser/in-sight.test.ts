import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { findings } from '../../../../internal/testing/axe.ts';
import { sharedBrowser } from '../../../../internal/testing/browser.ts';
import {
  hostHearingPack,
  lessonOf,
  openWithDevices,
  playLoop,
  SHORT_LESSON,
  willStrike,
} from '../../../../internal/testing/hearing.ts';
import { coverPage, PHONES, underNotch } from '../../../../internal/testing/notch.ts';

const lesson = lessonOf(SHORT_LESSON);
const browser = await sharedBrowser();
const host = await hostHearingPack(SHORT_LESSON);

/** Parts that do not lie wholly between the upper edge of the window and the ledge, without scrolling. */
const outOfSight = (page: Page, parts: readonly string[]) =>
  page.evaluate((all) => {
    window.scrollTo(0, 0);
    const floor = document.querySelector('[data-part="ledge"]')?.getBoundingClientRect().top ?? 0;
    return all.filter((part) => {
      const box = document.querySelector(part)?.getBoundingClientRect();
      return !box || box.height === 0 || box.top < 0 || box.bottom > floor + 1 || box.right > innerWidth + 1;
    });
  }, parts);

const PLAYING = [
  ...['h1', '[data-part="drum"]', '[data-part="layers"]', '[data-part="limbs"]'],
  ...['[data-part="bar"]', '[data-part="beat"]', '[data-part="bar-name"]', '[data-part="beat-name"]'],
  ...[
    '[data-on="exercise"][data-bar="1"]',
    '[data-part="after-loop"] [data-verdict]',
    '[data-part="advice"]',
  ],
];

it.each([
  [390, 844],
  [844, 390],
  [820, 1180],
  [1440, 900],
])(
  '[ST144] [ST145] number, drum, layers, ball, beat and verdict are in sight while it plays: %i × %i',
  async (width, height) => {
    const page = await openWithDevices(browser, `${host.url}#1`, {}, { viewport: { width, height } });
    await page.getByRole('button', { name: 'Use an electronic kit' }).click();
    await page.locator('[data-ear="on"]').waitFor();
    const late = playLoop(lesson, 1, 160, ({ voice }) => ({ lateMs: voice === 'snare' ? 70 : 4 }));
    await willStrike(page, [late, late], { bpm: 160, loopSeconds: 1.5 });
    await page.getByRole('button', { name: 'Play', exact: true }).click();
    await page.locator('[data-part="advice"]').waitFor();
    await page.locator('[data-part="counter"][data-kind="pattern"]').waitFor();
    expect(await outOfSight(page, PLAYING)).toEqual([]);
    expect(await page.locator('[data-part="drum"]').textContent()).toBe('snare');
    expect(await page.locator('[data-part="layers"]').textContent()).toBe(
      'Layer 4 of 4: ride, hi-hat foot, bass drum, snare',
    );
    // library: axe-core, every rule that it runs by default: the judge's words while it plays …
    expect(await findings(page), 'verdict').toEqual([]);
    await page.goto(`${host.url}#`);
    await page.getByRole('button', { name: /Practise this list|Go on with the list/ }).click();
    await page.locator('[data-part="run"]').waitFor();
    // … and the strip of today's list.
    expect(await outOfSight(page, ['[data-part="run"]', 'h1', '[data-part="counter"]'])).toEqual([]);
    expect(await findings(page), 'list').toEqual([]);
  },
);

it('[ST144] shows every limb on request, by touch and by key, and the exercise alone again', async () => {
  const page = await openWithDevices(browser, `${host.url}#1`);
  const heads = () => page.locator('[data-on="exercise"] .notehead').count();
  await expect.poll(heads).toBeGreaterThan(0);
  const alone = await heads();
  await page.getByRole('button', { name: 'Every limb' }).click();
  await expect.poll(heads).toBeGreaterThan(alone);
  await page.keyboard.press('g');
  await expect.poll(heads).toBe(alone);
});

it('[ST145] shows today’s list first on a phone that lies across', async () => {
  const page = await openWithDevices(browser, host.url, {}, { viewport: { width: 844, height: 390 } });
  const item = page.locator('[data-part="plan-item"]').nth(1);
  await item.waitFor();
  const box = await item.boundingBox();
  expect((box?.y ?? 999) + 44).toBeLessThan(390);
});

it.each(PHONES)('[ST3700] nothing lies under what a phone covers: $viewport.width wide', async (phone) => {
  const page = await openWithDevices(browser, `${host.url}#`);
  await coverPage(page, phone);
  const sees = (css: string) => page.locator(css).first().waitFor();
  await sees('h1');
  expect(await underNotch(page, phone), 'sheet').toEqual([]);
  await page.goto(`${host.url}#1`);
  await sees('[data-on="exercise"] .notehead');
  expect(await underNotch(page, phone), 'exercise').toEqual([]);
  await page.getByRole('button', { name: 'More', exact: true }).click();
  await sees('dialog[open]');
  expect(await underNotch(page, phone), 'settings').toEqual([]);
});
