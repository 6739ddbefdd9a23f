import { readFile } from 'node:fs/promises';
import { unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { findings } from '../../../../internal/testing/axe.ts';
import { sharedBrowser } from '../../../../internal/testing/browser.ts';
import {
  callClean,
  hostHearingPack,
  openWithDevices,
  SHORT_LESSON,
} from '../../../../internal/testing/hearing.ts';
import { playOnForLog } from '../../../../internal/testing/practice.ts';

const browser = await sharedBrowser();
const host = await hostHearingPack(SHORT_LESSON);

const play = (page: Page) => page.getByRole('button', { name: 'Play', exact: true }).click();
const rows = (page: Page) => page.locator('[data-part="log"] tbody tr');

/** Opens the sheet with what was played and the safe-keeping unfolded. */
async function openHistory(page: Page): Promise<void> {
  await page.goto('about:blank');
  await page.goto(host.url);
  await page.getByRole('heading', { name: 'What you have played' }).click();
  await page.getByRole('heading', { name: 'Keep it safe' }).click();
}

/** Runs in the page: whether a stretch has been kept. */
async function hasStretch(): Promise<boolean> {
  const opening = indexedDB.open('shedbook-practice', 1);
  const database = await new Promise<IDBDatabase>((resolve) => {
    opening.onsuccess = () => resolve(opening.result);
  });
  const asked = database.transaction('notes').objectStore('notes').getAll();
  const all = await new Promise<{ name: string }[]>((resolve) => {
    asked.onsuccess = () => resolve(asked.result);
  });
  database.close();
  return all.some(({ name }) => name.startsWith('entry '));
}

/** Plays exercise 1 until a stretch of it has been kept, while it goes on playing. */
async function playUntilKept(page: Page): Promise<void> {
  await page.goto(`${host.url}#1`);
  await play(page);
  await callClean(page);
  await expect.poll(() => page.evaluate(hasStretch)).toBe(true);
}

/** Counts from now on how often a page writes, and from the first time on how often it reads many things of what is kept. */
function countReadings(page: Page): Promise<void> {
  return page.evaluate(() => {
    const counts = { getAll: 0, put: 0 };
    Object.assign(window, { counts });
    const { getAll, put } = IDBObjectStore.prototype;
    IDBObjectStore.prototype.getAll = function (...args) {
      counts.getAll += 1;
      return getAll.apply(this, args);
    };
    IDBObjectStore.prototype.put = function (...args) {
      // what a page reads as it starts may come late where the machine is busy
      if (counts.put === 0) counts.getAll = 0;
      counts.put += 1;
      return put.apply(this, args);
    };
  });
}

const counts = (page: Page) =>
  page.evaluate(() => ({ ...(window as unknown as { counts: { getAll: number; put: number } }).counts }));

it('[ST146] [ST4000] a page that is closed in the middle of playing loses no stretch, and what was kept before is not read while it plays', async () => {
  const page = await openWithDevices(browser, host.url);
  await playUntilKept(page);
  await countReadings(page);
  await expect.poll(async () => (await counts(page)).put, { timeout: 30_000 }).toBeGreaterThan(2);
  expect((await counts(page)).getAll).toBe(0);
  await openHistory(page);
  await rows(page).first().waitFor();
  expect(await rows(page).first().textContent()).toMatch(/^Exercise 1.*160 bpm/);
});

it('[ST146] says at once that nothing is kept, and gives what there is as a file', async () => {
  const page = await openWithDevices(browser, 'about:blank', {});
  await page.addInitScript(() => {
    IDBFactory.prototype.open = () => {
      throw new DOMException('no', 'SecurityError');
    };
  });
  await page.goto(host.url);
  const line = page.locator('[data-part="keeping"][data-keeping="refused"]');
  await line.waitFor();
  expect(await findings(page)).toEqual([]);
  await page.goto(`${host.url}#1`);
  await play(page);
  await callClean(page);
  await line.waitFor();
  const download = page.waitForEvent('download');
  await line.getByRole('button', { name: 'Save what there is' }).click();
  const files = unzipSync(await readFile(await (await download).path()));
  const log = JSON.parse(Buffer.from(files['practice-log.json'] ?? []).toString('utf8'));
  expect(log.entries).toHaveLength(1);
});

it('[ST146] says that there is no room, and goes on saying so until there is', async () => {
  const page = await openWithDevices(browser, 'about:blank');
  await page.addInitScript(() => {
    const { put } = IDBObjectStore.prototype;
    const full = { now: true };
    Object.assign(window, { full });
    IDBObjectStore.prototype.put = function (...args) {
      if (full.now) throw new DOMException('full', 'QuotaExceededError');
      return put.apply(this, args);
    };
  });
  await page.goto(`${host.url}#1`);
  await play(page);
  await callClean(page);
  await page.locator('[data-part="keeping"][data-keeping="full"]').waitFor();
  await page.evaluate(() => {
    (window as never as { full: { now: boolean } }).full.now = false;
  });
  await page.locator('[data-part="keeping"]').waitFor({ state: 'detached' });
  await openHistory(page);
  expect(await rows(page).first().textContent()).toMatch(/^Exercise 1/);
});

it('[ST146] an entry that cannot be read costs itself alone, is shown and can be taken out', async () => {
  const page = await openWithDevices(browser, host.url);
  await page.locator('[data-part="plan-item"]').first().waitFor();
  await page.evaluate(async () => {
    const opening = indexedDB.open('shedbook-practice', 1);
    const database = await new Promise<IDBDatabase>((resolve) => {
      opening.onsuccess = () => resolve(opening.result);
    });
    const common = {
      device: 'd',
      lesson: 'hearing',
      exercise: null,
      form: 'loop',
      heardBy: 'student',
      loops: [],
    };
    const startedAt = '2026-11-20T18:30:00+01:00';
    const entries = [
      { ...common, id: 'good', startedAt, durationSeconds: 720 },
      { ...common, id: 'clock', startedAt, durationSeconds: -3600 },
    ];
    const writing = database.transaction('notes', 'readwrite');
    const store = writing.objectStore('notes');
    store.put({ name: 'log', log: { version: 1, entries, removed: ['gone'] } });
    store.put({ name: 'entry broken', entry: { ...common, id: 'broken', startedAt: 'yesterday' } });
    // a page that goes takes with it what is not written yet
    await new Promise<void>((resolve) => {
      writing.oncomplete = () => resolve();
    });
    database.close();
  });
  await page.goto('about:blank');
  await page.goto(host.url);
  await page.getByRole('heading', { name: 'What you have played' }).click();
  await rows(page).first().waitFor();
  expect(await rows(page).first().textContent()).toContain('12 min');
  const unreadable = page.locator('[data-part="log-view"] [data-part="unreadable"]');
  expect(await unreadable.textContent()).toContain('2 entries of the log cannot be read');
  await unreadable.getByRole('button', { name: 'Take them out' }).click();
  await unreadable.waitFor({ state: 'detached' });
  await openHistory(page);
  await rows(page).first().waitFor();
  expect(await rows(page).first().textContent()).toContain('12 min');
  expect(await unreadable.count()).toBe(0);
});

it('[ST147] brings everything back on a device that was cleared', async () => {
  const page = await openWithDevices(browser, host.url);
  await playUntilKept(page);
  await page.locator('input[type="range"]').fill('192');
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  await openHistory(page);
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save everything' }).click();
  const bytes = await readFile(await (await download).path());
  const other = await openWithDevices(browser, host.url);
  await openHistory(other);
  await other.locator('[data-part="bring-back"] input').setInputFiles({
    ...{ name: 'saved.zip', mimeType: 'application/zip', buffer: bytes },
  });
  await other.locator('[data-part="came-back"]', { hasText: '1 log entries' }).waitFor();
  await other.getByRole('button', { name: 'Open the page with them' }).click();
  await other.getByRole('heading', { name: 'What you have played' }).click();
  expect(await rows(other).first().textContent()).toMatch(/^Exercise 1/);
  await other.goto(`${host.url}#1`);
  expect(await other.locator('[data-part="tempo"]').textContent()).toContain('192');
  await other.locator('[data-part="bring-back"]').waitFor({ state: 'detached' });
});

it('[ST147] keeps two students of one device apart', async () => {
  const page = await openWithDevices(browser, host.url, {});
  await playUntilKept(page);
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  await page.goto(`${host.url}#`);
  await page.getByRole('button', { name: 'Students on this device' }).click();
  await page.getByRole('dialog').waitFor();
  expect(await findings(page), 'students').toEqual([]);
  await page.getByLabel('Another student').fill('Sunniva');
  await page.getByLabel('Another student').press('Enter');
  await page.getByText('Sunniva plays').waitFor();
  await page.getByRole('heading', { name: 'What you have played' }).click();
  await page.getByText('Nothing yet.', { exact: true }).waitFor();
  await page.locator('[data-part="students"]').getByText('First student').click();
  await page.getByText('Sunniva plays').waitFor({ state: 'detached' });
  await page.getByRole('heading', { name: 'What you have played' }).click();
  await rows(page).first().waitFor();
});

it('[ST148] plays freely to the groove or the click, judges nothing and logs the minutes', async () => {
  const page = await openWithDevices(browser, host.url, {});
  await page.getByRole('link', { name: 'Free play' }).first().click();
  await page.locator('[data-part="free"]').waitFor();
  await page.getByText('The click alone').click();
  expect(await findings(page)).toEqual([]);
  await play(page);
  await page.locator('[data-part="counter"][data-kind="time"]').waitFor();
  expect(await page.locator('[data-part="ladder"], [data-part="after-loop"]').count()).toBe(0);
  // definition: the log keeps what was played for five seconds or more, on the clock of the page
  await playOnForLog(page);
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  await openHistory(page);
  await rows(page).first().waitFor();
  expect(await rows(page).first().textContent()).toMatch(/^Free play/);
});

it('[ST148] keeps the student’s own goal, and climbs towards it', async () => {
  const page = await openWithDevices(browser, host.url);
  await page.getByRole('button', { name: 'My own goal' }).click();
  await page.getByLabel('What I want to be able to do').fill('relaxed in the band');
  await page.getByLabel('At how many bpm').fill('184');
  await page.getByRole('button', { name: 'Keep my goal' }).click();
  await page.getByText('My goal: relaxed in the band, 184 bpm').waitFor();
  await page.reload();
  await page.getByText('My goal: relaxed in the band, 184 bpm').waitFor();
  await expect.poll(() => page.locator('h1 ~ p', { hasText: '160 to 184 bpm' }).count()).toBe(1);
});
