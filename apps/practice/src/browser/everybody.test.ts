import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { findings } from '../../../../internal/testing/axe.ts';
import { openWindow, sharedBrowser } from '../../../../internal/testing/browser.ts';
import type { WindowOptions } from '../../../../internal/testing/kit-at-hand.ts';
import {
  buildPack,
  hostFolder,
  PRACTICE_LESSON,
  pressUntilLadderSays,
  type StaticHost,
  temporaryFolder,
} from '../../../../internal/testing/practice.ts';

const FOLDER = temporaryFolder();

const browser = await sharedBrowser();

/** A window without a service worker, which would fetch the whole pack ahead beside what is tried; `offline.test.ts` has one. */
const openPage = (url: string, options: WindowOptions = {}) =>
  openWindow(browser, url, { serviceWorkers: 'block', ...options });
let host: StaticHost;

beforeAll(async () => {
  host = await hostFolder(buildPack(PRACTICE_LESSON, FOLDER.path));
});

afterAll(async () => {
  await host.stop();
  FOLDER.remove();
});

it.each([
  [390, 844],
  [820, 1180],
  [844, 390],
])('[ST49] axe finds nothing anywhere, light or dark: %i wide', async (width, height) => {
  const page = await openPage(host.url, { viewport: { width, height } });
  await page.locator('[data-part="exercise"]').nth(3).waitFor();
  // library: axe-core 4.14, every rule that it runs by default, those about colour in both schemes
  expect(await findings(page)).toEqual([]);
  await page.goto(`${host.url}#2`);
  await page.locator('[data-part="picture"] .notehead').first().waitFor({ state: 'attached' });
  expect(await findings(page)).toEqual([]);
  await page.getByRole('button', { name: 'That was clean' }).click();
  await page.locator('[data-part="ledge"] [aria-haspopup]').click();
  await page.getByRole('dialog').waitFor();
  expect(await findings(page)).toEqual([]);
  const overflow = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  expect(overflow).toBeLessThanOrEqual(0);
});

it('[ST52] loads at most 300 kB before anything sounds', async () => {
  const alone = await hostFolder(`${FOLDER.path}/practice`);
  // Without a worker, which fetches ahead what may be wanted without a network.
  const page = await openPage('about:blank', { viewport: { width: 390, height: 844 } });
  await page.goto(alone.url);
  await page.locator('[data-part="exercise"]').nth(3).waitFor();
  await page.waitForLoadState('networkidle');
  await page.getByRole('link', { name: /Practise exercise 1/ }).click();
  await page.locator('[data-part="picture"] .notehead').first().waitFor({ state: 'attached' });
  const sizes = [...alone.sent].filter(([path]) => !/worklet|worker/.test(path));
  const total = sizes.reduce((sum, [, size]) => sum + size, 0);
  expect(sizes.length).toBeGreaterThan(6);
  // definition: the goal of the practice room's first download, in bytes
  expect(total, JSON.stringify(sizes)).toBeLessThanOrEqual(300_000);
  await alone.stop();
});

/** What has the focus, in words. */
const focused = (page: Page) =>
  page.evaluate(() => {
    const { activeElement: element } = document;
    return element?.getAttribute('aria-label') ?? element?.textContent ?? '';
  });

/** Goes on by Tab until something has the focus. */
async function tabTo(page: Page, text: RegExp): Promise<void> {
  for (let i = 0; i < 60; i += 1) {
    await page.keyboard.press('Tab');
    if (text.test(await focused(page))) return;
  }
  throw new Error(`${text} cannot be reached by Tab`);
}

it('[ST50] opens, chooses, sets, plays and judges with keys alone', async () => {
  const page = await openPage(host.url);
  await page.locator('[data-part="exercise"]').nth(3).waitFor();
  await tabTo(page, /Practise exercise 2/);
  await page.keyboard.press('Enter');
  await page.waitForURL(/#2$/);
  await tabTo(page, /^More$/);
  await page.keyboard.press('Enter');
  await page.getByRole('dialog').waitFor();
  await tabTo(page, /^$/);
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Escape');
  // After the settings the button that plays has the focus.
  await expect.poll(() => focused(page)).toBe('Play');
  expect(await page.locator('[data-part="form"]').textContent()).not.toContain('Loop');
  await page.keyboard.press('ArrowRight');
  await page.waitForURL(/#3$/);
  await page.keyboard.press('Space');
  await page.getByRole('button', { name: 'Stop' }).waitFor();
  await pressUntilLadderSays(page, () => page.keyboard.press('c'), '1 of 3');
  await pressUntilLadderSays(page, () => page.keyboard.press('s'), '0 of 3');
  await page.keyboard.press('Space');
  await page.getByRole('button', { name: 'Play', exact: true }).waitFor();
  await page.keyboard.press('Escape');
  await page.locator('[data-part="exercise"]').first().waitFor();
});

it('[ST50] plays, judges, stops and goes on with two pedals', async () => {
  const page = await openPage(`${host.url}#1`);
  await page.locator('[data-part="play"]').waitFor();
  await page.locator('input[type="range"]').focus();
  await page.keyboard.press('PageDown');
  await page.getByRole('button', { name: 'Stop' }).waitFor();
  await pressUntilLadderSays(page, () => page.keyboard.press('PageDown'), '1 of 3');
  await page.keyboard.press('PageUp');
  await page.getByRole('button', { name: 'Play', exact: true }).waitFor();
  await page.keyboard.press('PageUp');
  await page.waitForURL(/#2$/);
});

it('[ST57] shows the bar so large that it is read from two metres on a phone', async () => {
  const page = await openPage(`${host.url}#1`, { viewport: { width: 390, height: 844 } });
  await page.locator('[data-part="play"]').waitFor();
  await page.keyboard.press('Space');
  await page.locator('[data-part="counter"][data-kind="pattern"] [data-part="bar"]').waitFor();
  const height = await page.evaluate(() => {
    const element = document.querySelector('[data-part="bar"]') as HTMLElement;
    const { fontWeight, fontSize, fontFamily } = getComputedStyle(element);
    const pen = document.createElement('canvas').getContext('2d') as CanvasRenderingContext2D;
    pen.font = `${fontWeight} ${fontSize} ${fontFamily}`;
    return pen.measureText('4').actualBoundingBoxAscent;
  });
  // published: ISO 9241-303, characters of 20 to 22 minutes of arc are read with ease: 12.8 mm at two metres
  const least = 2000 * Math.tan((22 / 60) * (Math.PI / 180));
  // definition: a phone of 390 CSS pixels is at least 64 mm wide
  expect(height * (64 / 390)).toBeGreaterThanOrEqual(least);
});

it('[ST54] is in German for a German reader, whole', async () => {
  const page = await openPage(host.url, { locale: 'de-DE' });
  await page.getByRole('heading', { name: 'Zum Mitnehmen' }).waitFor();
  expect(await page.evaluate(() => document.documentElement.lang)).toBe('de');
  await page.getByText('English').click();
  await page.getByRole('heading', { name: 'To take along' }).waitFor();
});

it('[ST50] learns a MIDI foot switch by one press, and plays with it from then on', async () => {
  const page = await openPage('about:blank');
  await page.addInitScript(() => {
    const input = Object.assign(new EventTarget(), { name: 'Pedal', state: 'connected' });
    const access = Object.assign(new EventTarget(), { inputs: new Map([['1', input]]) });
    navigator.requestMIDIAccess = async () => access as never;
    Object.assign(window, {
      press: (...bytes: number[]) =>
        input.dispatchEvent(Object.assign(new Event('midimessage'), { data: Uint8Array.from(bytes) })),
    });
  });
  // standard: MIDI 1.0, control change on channel 1, controller 64 (damper) down and up
  const press = () =>
    page.evaluate(() => {
      const { press: send } = window as never as { press: (...bytes: number[]) => void };
      send(0xb0, 64, 127);
      send(0xb0, 64, 0);
    });
  await page.goto(`${host.url}#1`);
  await page.locator('[data-part="ledge"] [aria-haspopup]').click();
  await page.getByText('Foot switch over MIDI').click();
  await page.getByRole('button', { name: 'Listen for MIDI' }).click();
  await page.getByRole('button', { name: 'Learn: Right pedal' }).click();
  await press();
  await page.getByText('controller 64, channel 1').waitFor();
  await page.getByRole('button', { name: 'Done' }).click();
  await press();
  await page.getByRole('button', { name: 'Stop' }).waitFor();
  await pressUntilLadderSays(page, press, '1 of 3');
});

it('[ST58] keeps the screen awake on the stand, and lets it sleep on the sheet', async () => {
  const page = await openPage('about:blank');
  await page.addInitScript(() => {
    const held = { now: 0 };
    const request = async () => {
      held.now += 1;
      const release = async () => {
        held.now -= 1;
      };
      return { release };
    };
    Object.defineProperty(navigator, 'wakeLock', { value: { request } });
    Object.assign(window, { held });
  });
  const held = () => page.evaluate(() => (window as never as { held: { now: number } }).held.now);
  await page.goto(`${host.url}#1`);
  await page.locator('[data-part="play"]').waitFor();
  await expect.poll(held).toBe(1);
  await page.keyboard.press('Escape');
  await page.locator('[data-part="exercise"]').first().waitFor();
  await expect.poll(held).toBe(0);
});

it('[ST59] lets the ball stand on the count where motion is unwanted', async () => {
  const page = await openPage(`${host.url}#1`, { reducedMotion: 'reduce' });
  await page.locator('[data-part="play"]').waitFor();
  await page.keyboard.press('Space');
  await page.locator('[data-part="counter"][data-kind="pattern"]').waitFor();
  const seen = await page.evaluate(async () => {
    const places = new Set<string>();
    for (let frame = 0; frame < 60; frame += 1) {
      await new Promise(requestAnimationFrame);
      const balls = [...document.querySelectorAll<SVGElement>('[data-part="ball"]')];
      const ball = balls.find((each) => each.style.visibility === 'visible');
      const [, x, y] = /translate\(([-\d.]+) ([-\d.]+)\)/.exec(ball?.getAttribute('transform') ?? '') ?? [];
      if (ball) places.add(`${x} ${Number(y) - Number(ball.dataset['floor'])}`);
    }
    return [...places];
  });
  // definition: a bar of this exercise has six counts and strokes, and the ball never leaves the floor
  expect(seen.length).toBeGreaterThan(1);
  expect(seen.length).toBeLessThanOrEqual(6);
  for (const place of seen) expect(Math.abs(Number(place.split(' ')[1]))).toBeLessThan(0.01);
});

it('[ST60] works without the parts that cannot be loaded', async () => {
  const page = await openPage('about:blank');
  const refused: string[] = [];
  await page.route(/(?:plan|hearing)-body/, (route) => {
    refused.push(route.request().url());
    return route.abort();
  });
  await page.goto(host.url);
  await page.locator('[data-part="exercise"]').nth(3).waitFor();
  await expect.poll(() => refused.length).toBeGreaterThan(0);
  await page.getByRole('link', { name: /Practise exercise 1/ }).click();
  await page.locator('[data-part="play"]').click();
  await page.getByRole('button', { name: 'Stop' }).waitFor();
  await expect.poll(() => refused.some((url) => url.includes('hearing-body'))).toBe(true);
  await page.locator('[data-part="counter"][data-kind="pattern"]').waitFor();
});
