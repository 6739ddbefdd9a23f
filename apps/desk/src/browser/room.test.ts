import { readFileSync } from 'node:fs';
import { Bpm, type Lesson, parseLesson, perform } from '@shedbook/core';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import {
  addressOf,
  settled,
  sharedBrowser,
  sharedDesk,
  startDesk,
} from '../../../../internal/testing/browser.ts';
import type { WindowOptions } from '../../../../internal/testing/kit-at-hand.ts';
import { openListening, recordingOf, strokesOf, waitForStrokes } from '../../../../internal/testing/sound.ts';
import type { View } from '../shared/address.ts';

const RATE = 44_100;

const browser = await sharedBrowser();
const show = sharedDesk(browser);

const DEMO = parseLesson(readFileSync('demo/first-swing.lesson.yaml', 'utf8'), 'demo').lesson as Lesson;

function score(exercise: number, bpm: number) {
  const form = DEMO.forms.find((each) => each.name === 'loop') as Lesson['forms'][0];
  return perform(DEMO, { exercise, form, bpm: Bpm(bpm) });
}

async function openListeningTo(view: View, options: WindowOptions = {}): Promise<Page> {
  const { url } = await startDesk();
  const address = await addressOf(url, 'First swing', view);
  const page = await openListening(browser, address, { viewport: { width: 1440, height: 900 }, ...options });
  await page.locator('main').waitFor();
  await settled(page);
  return page;
}

it('[ST22] lets the next exercise follow after a loop, exactly where the form ends, and goes on hands off', async () => {
  const bpm = 300;
  const page = await openListeningTo('room');
  await page.getByRole('spinbutton', { name: 'Tempo' }).fill(String(bpm));
  await page.getByLabel('Next after').selectOption({ label: '1 loop' });
  await page.locator('[data-part="room-number"] strong').click();
  await page.keyboard.press('Space');
  const scores = [1, 2, 3].map((exercise) => score(exercise, bpm));
  const [first] = scores;
  if (!first) throw new Error('no score');
  const bars = first.durationSeconds - first.countInSeconds;
  // definition: the strokes of each exercise, one form after the other, on samples to the nearest
  const wanted = scores.flatMap(({ strokes, countInSeconds }, pass) =>
    strokes
      .filter((each) => pass === 0 || each.role !== 'count-in')
      .map((each) => [
        Math.round((countInSeconds + pass * bars + (each.timeSeconds - countInSeconds)) * RATE),
        each.voice,
      ]),
  );
  await waitForStrokes(page, wanted.length - 4);
  const played = (await strokesOf(page)).slice(0, wanted.length);
  const start = played[0]?.sample ?? 0;
  expect(played.map(({ sample, stroke }) => [sample - start, stroke.voice])).toEqual(
    wanted.slice(0, played.length),
  );
  const shown = async () => Number(await page.locator('[data-part="room-number"] strong').textContent());
  await expect.poll(shown).toBeGreaterThanOrEqual(3);
});

it('[ST22] loops an exercise until it is stopped, and then falls silent', async () => {
  const page = await openListeningTo('page', { kit: 'whole' });
  await page.getByRole('spinbutton', { name: 'Tempo' }).fill('300');
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  const { strokes } = score(1, 300);
  const once = strokes.filter((each) => each.role !== 'count-in').length;
  await waitForStrokes(page, 2 * once + 20);
  expect((await strokesOf(page)).at(-1)?.pass).toBeGreaterThanOrEqual(2);
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  await page.getByRole('button', { name: 'Play', exact: true }).waitFor();
  const stopped = (await strokesOf(page)).length;
  await page.waitForFunction(
    (frames) => {
      const { blocks } = window.heardByTest;
      return (blocks.at(-1)?.frame ?? 0) > frames;
    },
    (await recordingOf(page).then(({ from, left }) => from + left.length)) + 6 * RATE,
    { polling: 100 },
  );
  expect(await strokesOf(page)).toHaveLength(stopped);
  const { left } = await recordingOf(page);
  const last = left.slice(-RATE / 2);
  // definition: −60 dB of full scale
  expect(Math.max(...last.map(Math.abs))).toBeLessThan(0.001);
});

it.each([
  [1440, 900],
  [820, 1180],
])('[ST1501] shows number, tempo and beat as they are read at two metres: %i wide', async (width, height) => {
  const page = await show('First swing', 'room', { width, height });
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  const beat = page.locator('[data-part="room-beat"]');
  await expect.poll(() => beat.textContent()).toMatch(/^[1-4]$/);
  const heights = await page.evaluate(() => {
    const pen = document.createElement('canvas').getContext('2d');
    const shown = ['room-number"] strong', 'room-tempo"] strong', 'room-beat"]'];
    return shown.map((each) => {
      const element = document.querySelector(`[data-part="${each}`);
      if (!pen || !element) throw new Error(each);
      const { fontWeight, fontSize, fontFamily } = getComputedStyle(element);
      pen.font = `${fontWeight} ${fontSize} ${fontFamily}`;
      return pen.measureText('1').actualBoundingBoxAscent;
    });
  });
  // standard: ISO 9241-303: 20 minutes of arc, at 2 m 11.6 mm; CSS Values and Units 3: an inch has 96 px and 25.4 mm
  const least = (2000 * Math.tan((20 / 60) * (Math.PI / 180)) * 96) / 25.4;
  for (const height of heights) expect(height).toBeGreaterThanOrEqual(least);
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
});

/** Keeps what is asked of the screen's lock, and lets it be given as the browser gives it. */
function watchWakeLock(): void {
  const asked: string[] = [];
  Object.assign(window, { askedOfWakeLock: asked });
  const request = WakeLock.prototype.request;
  WakeLock.prototype.request = async function (type) {
    asked.push(`request ${type}`);
    const lock = await request.call(this, type);
    lock.addEventListener('release', () => asked.push('release'));
    return lock;
  };
}

const asked = (page: Page) =>
  page.evaluate(() => (window as unknown as { askedOfWakeLock: string[] }).askedOfWakeLock);

it('[ST381] shows what the teacher wrote to the section', async () => {
  const page = await show('Swing, limb by limb', 'room');
  await page.getByRole('button', { name: 'Each limb, and why' }).click();
  const text = page.getByRole('dialog', { name: 'Each limb, and why' });
  expect(await text.locator('li strong').allTextContents()).toEqual([
    'The ride',
    'The hi-hat foot',
    'The bass drum',
  ]);
  await text.getByRole('button', { name: 'Done' }).click();
  await text.waitFor({ state: 'detached' });
});

it('[ST33] asks for the screen to stay awake while the room is open, and lets it go after', async () => {
  const page = await show('First swing', 'page');
  await page.evaluate(watchWakeLock);
  expect(await asked(page)).toEqual([]);
  await page.getByRole('link', { name: 'Lesson room' }).click();
  // standard: W3C Screen Wake Lock API, WakeLock.request('screen')
  await expect.poll(() => asked(page)).toContain('request screen');
  await page.getByRole('button', { name: 'Leave the lesson room' }).click();
  await expect.poll(async () => (await asked(page)).at(-1)).toBe('release');
  const requests = (await asked(page)).filter((each) => each.startsWith('request'));
  expect((await asked(page)).filter((each) => each === 'release')).toHaveLength(requests.length);
});
