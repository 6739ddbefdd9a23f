import { readFile } from 'node:fs/promises';
import { formatPattern } from '@shedbook/core';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import {
  keptLesson,
  openWindow,
  settled,
  sharedBrowser,
  startDesk,
} from '../../../../internal/testing/browser.ts';
import { press, tabTo } from '../../../../internal/testing/keys.ts';
import { textOfPdf } from '../../../../internal/testing/pdf.ts';

const browser = await sharedBrowser();

async function writeGroove(page: Page): Promise<void> {
  await tabTo(page, /^a Groove/);
  await press(page, 'Enter');
  await page.getByRole('heading', { name: 'The groove, limb by limb' }).waitFor();
  await tabTo(page, /^button Take out the ride/);
  await tabTo(page, /^button 1, stroke/);
  await press(page, 'ArrowRight ArrowRight ArrowRight .');
  await tabTo(page, /^button Take out the hi-hat foot/);
  await tabTo(page, /^input/);
  await press(page, 'ArrowLeft ArrowLeft ArrowLeft');
  await settled(page);
}

async function writeExercises(page: Page): Promise<void> {
  await tabTo(page, /^a Page/, true);
  await press(page, 'Enter');
  await tabTo(page, /^button 1, rest/);
  await press(page, 'a ArrowRight ArrowRight g r ArrowRight x ArrowRight ArrowRight ArrowRight x');
  await press(page, 'Enter');
  await page.locator('[data-exercise="2"][data-chosen]').waitFor();
  await press(page, 'Home x End x');
  await press(page, 'Enter');
  await page.locator('[data-exercise="3"][data-chosen]').waitFor();
  await press(page, 'Home 4 x ArrowRight g ArrowRight g ArrowRight Shift+X .');
  await settled(page);
}

it('[ST6] writes, moves, hears and prints a whole lesson with the keyboard alone', async () => {
  const { url } = await startDesk();
  const page = await openWindow(browser, url, { viewport: { width: 1280, height: 900 } });
  await page.locator('[data-part="lesson-card"]').nth(4).waitFor();
  await tabTo(page, /^button New lesson/);
  await press(page, 'Enter');
  await page.locator('[data-part="line-editor"]').waitFor();
  await tabTo(page, /^input Title of the lesson/);
  await press(page, 'Control+A');
  await page.keyboard.type('Written by keys');
  await press(page, 'Enter');
  await settled(page);
  const before = await keptLesson(page);
  await writeGroove(page);
  await writeExercises(page);
  await press(page, 'Alt+ArrowUp');
  await settled(page);
  const lesson = await keptLesson(page);
  expect(lesson.title).toBe('Written by keys');
  const groove = lesson.groove.map(({ voice, pattern }) => [voice, formatPattern(pattern)]);
  expect(groove).toContainEqual(['ride', 'x x.. x x.x']);
  expect(lesson.balance['hihat-foot']).toBe(before.balance['hihat-foot'] - 3);
  const exercises = lesson.exercises.map(({ parts, sticking }) => [
    formatPattern(parts[0]?.pattern ?? { bars: [] }),
    sticking?.join('') ?? null,
  ]);
  expect(exercises).toEqual([
    ['X.g x.. x.. ...', 'LRLR'],
    ['xgg. ... ... ...', null],
    ['x.. ... ... ..x', null],
  ]);
  await press(page, 'p');
  await page.getByRole('button', { name: 'Stop', exact: true }).waitFor();
  await expect.poll(() => page.locator('[data-part="ledge-count"]').textContent()).toContain('1 · ');
  await press(page, 'p');
  await tabTo(page, /^a Print/, true);
  await press(page, 'Enter');
  await page.locator('[data-part="print-page"]').first().waitFor();
  await tabTo(page, /^a Download PDF/);
  const download = page.waitForEvent('download');
  await press(page, 'Enter');
  const file = await (await download).path();
  // library: pdf.js 5.4
  expect(await textOfPdf(await readFile(file))).toContain('Written by keys');
});
