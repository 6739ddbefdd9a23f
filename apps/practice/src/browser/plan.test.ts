import { exerciseKey } from '@shedbook/core';
import { expect, it, onTestFinished } from 'vitest';
import { findings } from '../../../../internal/testing/axe.ts';
import { sharedBrowser } from '../../../../internal/testing/browser.ts';
import {
  HEARING_LESSON,
  hostHearingPack,
  lessonOf,
  makeHearingPack,
  openWithDevices,
} from '../../../../internal/testing/hearing.ts';
import { hostFolder, temporaryFolder } from '../../../../internal/testing/practice.ts';
import { openListening, waitForStrokes } from '../../../../internal/testing/sound.ts';

const browser = await sharedBrowser();
const host = await hostHearingPack();

it('[ST86] today’s list fits the minutes and leads to the exercises', async () => {
  const page = await openWithDevices(browser, host.url);
  const items = page.locator('[data-part="plan-item"]');
  for (const minutes of [10, 45]) {
    await page.getByLabel('Minutes I have').selectOption(String(minutes));
    const texts = await items.locator('[data-part="minutes"]').allTextContents();
    const total = texts.reduce((sum, text) => sum + Number.parseInt(text, 10), 0);
    expect(total).toBeGreaterThan(0);
    expect(total).toBeLessThanOrEqual(minutes);
  }
  // common practice: a warm-up comes first, and a long session has a break
  expect(await items.first().getAttribute('data-kind')).toBe('warm-up');
  expect(await items.locator('strong', { hasText: 'Break' }).count()).toBeGreaterThanOrEqual(1);
  await page.getByRole('link', { name: 'Practise Exercise 1' }).first().click();
  await page.waitForURL(/#1$/);
  await page.goBack();
  expect(await page.getByLabel('Minutes I have').inputValue()).toBe('45');
});

it('[ST114] the list starts with sound, goes on item by item, and ticks off what was done', async () => {
  const page = await openListening(browser, host.url, { viewport: { width: 390, height: 844 } });
  await page.getByLabel('Minutes I have').selectOption('45');
  const items = page.locator('[data-part="plan-item"]');
  const kinds = await items.evaluateAll((all) => all.map((each) => each.getAttribute('data-kind')));
  const first = kinds.indexOf('new');
  await page.getByRole('button', { name: 'Practise this list' }).click();
  // definition: the list begins with its warm-up, the groove alone, and it sounds
  await page.waitForURL(/#time$/);
  await waitForStrokes(page, 8);
  const run = page.locator('[data-part="run"]');
  expect(await run.getAttribute('data-kind')).toBe('warm-up');
  expect(await run.textContent()).toContain(`1 of ${kinds.length} on today’s list`);
  const next = page.getByRole('button', { name: 'Next on the list' });
  for (let i = 0; i < first; i += 1) await next.click();
  await page.waitForURL(/#1$/);
  await page.locator('[data-part="play"][aria-label="Stop"]').waitFor();
  expect(await run.getAttribute('data-kind')).toBe('new');
  // A break lets the sticks lie, and says how long.
  const rest = kinds.indexOf('break');
  for (let i = first; i < rest; i += 1) await next.click();
  await page.locator('[data-part="run"][data-kind="break"]').waitFor();
  await page.locator('[data-part="play"][aria-label="Play"]').waitFor();
  expect(await run.textContent()).toContain('Break: ');
  await page.getByRole('button', { name: 'Leave the list' }).click();
  await run.waitFor({ state: 'detached' });
});

it('[ST114] what was played today is ticked off, and the list goes on after it', async () => {
  const page = await openWithDevices(browser, host.url);
  await page.getByLabel('Minutes I have').selectOption('20');
  const common = { device: 'device-old', lesson: 'hearing', form: 'loop', heardBy: 'student', loops: [] };
  const startedAt = await page.evaluate(() => `${new Date().toISOString().slice(0, 19)}Z`);
  const log = {
    version: 1,
    entries: [{ ...common, id: 'warm', exercise: null, startedAt, durationSeconds: 300 }],
    removed: [],
  };
  const before = await page.locator('[data-part="plan-item"]').allTextContents();
  await page.getByRole('heading', { name: 'What you have played' }).click();
  const file = { name: 'log.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(log)) };
  await page.locator('[data-part="log-file"] input').setInputFiles(file);
  await page.locator('[data-part="plan-item"][data-done="true"]').first().waitFor();
  const after = page.locator('[data-part="plan-item"]');
  expect(await after.count()).toBe(before.length);
  expect(await after.first().getAttribute('data-done')).toBe('true');
  await page.getByRole('button', { name: 'Go on with the list' }).waitFor();
});

it('[ST86] what the teacher set comes first, with what they wrote to it', async () => {
  const folder = temporaryFolder();
  const last = lessonOf(HEARING_LESSON).exercises.at(-1);
  if (!last) throw new Error('no exercise');
  const set = [{ exercise: exerciseKey(last), pinned: true, note: 'Let the ride sing.' }];
  const own = await hostFolder(
    await makeHearingPack(HEARING_LESSON, folder.path, 'hearing', { assignments: set }),
  );
  onTestFinished(async () => {
    await own.stop();
    folder.remove();
  });
  const page = await openWithDevices(browser, own.url);
  const item = page.locator('[data-part="plan-item"][data-kind="assigned"]').first();
  await item.waitFor();
  expect(await item.textContent()).toContain('Exercise 3');
  expect(await item.textContent()).toContain('Let the ride sing.');
  // definition: only the warm-up stands before it
  expect(await page.locator('[data-part="plan-item"]').nth(1).getAttribute('data-kind')).toBe('assigned');
});

it('[ST91] says what is left at a level, local rules first', async () => {
  const page = await openWithDevices(browser, host.url);
  await page.getByRole('heading', { name: 'Ears and body' }).click();
  const care = page.locator('[data-part="care-view"]');
  expect(await care.locator('p').first().textContent()).toContain('Local rules');
  await care.getByLabel('Level at the ear').fill('100');
  // published: NIOSH 98-126, table 1-1: 100 dBA for 15 minutes a day
  await expect
    .poll(() => care.locator('[data-part="left"]').textContent())
    .toContain('At 100 dBA about 15 min are left today');
  await care.getByText('child, or sensitive ears').click();
  await care.getByLabel('Level at the ear').fill('75');
  // published: WHO-ITU H.870: children and sensitive listeners 75 dBA for 40 hours a week
  await expect
    .poll(() => care.locator('[data-part="left"]').textContent())
    .toContain('At 75 dBA about 40 h are left this week');
  await page.reload();
  await page.getByRole('heading', { name: 'Ears and body' }).click();
  await expect.poll(() => care.locator('[data-part="left"]').textContent()).toContain('At 75 dBA');
});

it.each([
  [390, 844],
  [820, 1180],
])('[ST93] axe finds nothing on the panels, light or dark: %i wide', async (width, height) => {
  const page = await openWithDevices(browser, host.url, {}, { viewport: { width, height } });
  for (const title of ['What you have played', 'Takes', 'Ears and body']) {
    await page.getByRole('heading', { name: title }).click();
  }
  // library: axe-core 4.14, every rule that it runs by default, those about colour in both schemes
  expect(await findings(page), 'sheet').toEqual([]);
  await page.goto(`${host.url}#1`);
  await page.getByRole('heading', { name: 'Hear yourself' }).waitFor();
  expect(await findings(page), 'before hearing').toEqual([]);
  await page.getByRole('button', { name: 'Use an electronic kit' }).click();
  await page.locator('[data-ear="on"]').waitFor();
  await page.getByText('Go on by itself').click();
  expect(await findings(page), 'hearing').toEqual([]);
  await page.getByRole('button', { name: 'Check the timing' }).click();
  expect(await findings(page), 'timing check').toEqual([]);
});
