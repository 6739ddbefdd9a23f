import { formNamed } from '@shedbook/core';
import type { StrokesEvent } from '@shedbook/stand';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { findings } from '../../../../internal/testing/axe.ts';
import {
  addressOf,
  keptLesson,
  openView,
  openWindow,
  PATIENCE_MS,
  settled,
  sharedBrowser,
  sharedDesk,
  startDesk,
  walkTo,
} from '../../../../internal/testing/browser.ts';

const browser = await sharedBrowser();
const show = sharedDesk(browser);

const slot = (page: Page, exercise: number) =>
  page.locator(`[data-exercise="${exercise}"] [data-slot]`).first();

it('[ST421] makes a form of one’s own by tapping, which is heard and kept', async () => {
  const page = await show('First swing', 'page', { width: 390, height: 844 });
  await page.getByRole('button', { name: 'Forms', exact: true }).click();
  await page.getByRole('button', { name: 'New form from this one' }).click();
  await page.getByRole('button', { name: 'Add a section to the form' }).click();
  await page.getByRole('button', { name: 'End it on an accent' }).first().click();
  await page.getByRole('button', { name: 'rim shot' }).click();
  await page.getByRole('button', { name: 'Bars of count-in: one more' }).click();
  await page.getByRole('button', { name: 'Times through: one more' }).click();
  // library: axe-core 4.14, every rule that it runs by default
  expect(await findings(page)).toEqual([]);
  await page.getByRole('button', { name: 'Hear it' }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Stop' }).click();
  await page.getByRole('button', { name: 'Done' }).click();
  await settled(page);
  const form = formNamed(await keptLesson(page), 'My form');
  expect(form).toMatchObject({ repeat: 2, countInBars: 2 });
  expect(form?.sections).toMatchObject([
    { play: 'pattern', bars: 4, ending: { beat: 4, voices: ['crash'] } },
    { play: 'time', bars: 4, ending: null },
  ]);
});

it('[ST423] copies exercises from one lesson into another by keys, several at once, and they say where they are from', async () => {
  const { url } = await startDesk();
  const page = await openWindow(browser, await addressOf(url, 'First swing', 'page'));
  await page.locator('[data-exercise="1"] [data-slot]').first().focus();
  await page.keyboard.press('Shift+ArrowDown');
  await page.keyboard.press('Shift+ArrowDown');
  await page.keyboard.press('Control+c');
  await page.getByText('3 exercises copied.').waitFor();
  await walkTo(page, new URL(await addressOf(url, 'Swing, limb by limb', 'page')).pathname);
  await slot(page, 1).focus();
  await page.keyboard.press('Control+v');
  await page.getByText('3 exercises put in.').waitFor();
  await settled(page);
  const { exercises } = await keptLesson(page);
  expect(exercises.slice(1, 4).map(({ from }) => from?.lesson)).toEqual(Array(3).fill('first-swing'));
  expect(exercises).toHaveLength(25);
  // A waltz has other bars.
  await walkTo(page, new URL(await addressOf(url, 'Jazz waltz', 'page')).pathname);
  await slot(page, 1).focus();
  await page.keyboard.press('Control+v');
  await page.getByText('What was copied has 4 beats in a bar; here a bar has 3.').waitFor();
});

it('[ST422] turns a bar, moves it and copies it behind itself, by touch alone', async () => {
  const page = await openView(browser, 'First swing', 'page', {
    viewport: { width: 390, height: 844 },
    hasTouch: true,
  });
  const before = (await keptLesson(page)).exercises[2]?.parts[0]?.pattern.bars[0]?.map(({ text }) => text);
  await page.locator('[data-exercise="3"] button').first().tap();
  await page.getByRole('button', { name: 'More tools for this exercise' }).tap();
  await page.getByText('Copy, turn and move').tap();
  await page.getByText('bar', { exact: true }).tap();
  await page.getByRole('button', { name: 'Copy', exact: true }).tap();
  await page.getByRole('button', { name: 'Paste', exact: true }).tap();
  await page.getByRole('button', { name: 'Backwards', exact: true }).tap();
  const bars = async () =>
    (await keptLesson(page)).exercises[2]?.parts[0]?.pattern.bars.map((bar) => bar.map(({ text }) => text));
  const turned = before?.toReversed().map((text) => [...text].toReversed().join(''));
  // definition: the bar that is written in is turned round, its copy stands behind it as it was
  await expect.poll(bars, { timeout: PATIENCE_MS }).toEqual([turned, before]);
});

it('[ST424] [ST3802] clicks on 2 and 4 alone, counts aloud over them, and counts in as long as is wanted', async () => {
  const page = await openView(browser, 'First swing', 'page');
  await page.getByRole('button', { name: 'More sound settings' }).click();
  await page.getByText('2 and 4', { exact: true }).click();
  const coming = page.waitForResponse(/english.*\.flac/);
  await page.getByText('Count aloud over it', { exact: true }).click();
  expect((await coming).ok()).toBe(true);
  await page.getByRole('combobox', { name: 'Count-in' }).selectOption({ label: 'none' });
  await page.keyboard.press('Escape');
  await page.evaluate(() => {
    const beats: number[] = [];
    const seconds: number[] = [];
    const words: { at: number; offset: number }[] = [];
    Object.assign(window, { clickedOfTest: beats, heardOfTest: () => ({ seconds, words }) });
    const start = AudioBufferSourceNode.prototype.start;
    AudioBufferSourceNode.prototype.start = function (at = 0, offset = 0, duration?: number) {
      words.push({ at, offset });
      start.call(this, at, offset, duration);
    };
    window.addEventListener('shedbook:strokes', (event) => {
      const { strokes, sampleRate } = (event as CustomEvent<StrokesEvent>).detail;
      for (const { stroke, sample } of strokes) {
        if (stroke.voice !== 'click') continue;
        beats.push(stroke.written.beat);
        seconds.push(sample / sampleRate);
      }
    });
  });
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  const clicked = () => page.evaluate(() => (window as unknown as { clickedOfTest: number[] }).clickedOfTest);
  await expect.poll(async () => (await clicked()).length, { timeout: 30_000 }).toBeGreaterThan(2);
  // definition: no count-in, so that the first click is that of beat 2
  expect((await clicked()).slice(0, 3)).toEqual([2, 4, 2]);
  const heard = await page.evaluate(() =>
    (window as unknown as { heardOfTest: () => Record<'seconds' | 'words', unknown> }).heardOfTest(),
  );
  const { seconds, words } = heard as { seconds: number[]; words: { at: number; offset: number }[] };
  // definition: a word every half second in the recording, "one" first; "two" and "four" are felt within a fifth of a
  // second of their beginning, which is why they begin before their clicks
  expect(words.slice(0, 3).map(({ offset }) => Math.floor(offset / 0.5) + 1)).toEqual([2, 4, 2]);
  for (const [index, { at }] of words.slice(0, 3).entries()) {
    expect((seconds[index] ?? 0) - at).toBeGreaterThan(0);
    expect((seconds[index] ?? 0) - at).toBeLessThan(0.2);
  }
});

it('[ST404] loses no press of several in a row: twelve bars are twelve', async () => {
  const page = await show('First swing', 'page');
  await page.getByRole('button', { name: 'The same bar again' }).focus();
  await Promise.all(Array.from({ length: 11 }, () => page.keyboard.press('Enter')));
  const bars = async () => (await keptLesson(page)).exercises[0]?.parts[0]?.pattern.bars.length;
  await expect.poll(bars, { timeout: PATIENCE_MS }).toBe(12);
});
