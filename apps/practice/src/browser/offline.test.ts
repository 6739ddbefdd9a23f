import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { sharedBrowser } from '../../../../internal/testing/browser.ts';
import { makeHearingPack } from '../../../../internal/testing/hearing.ts';
import {
  buildPack,
  hostFolder,
  PRACTICE_LESSON,
  type StaticHost,
  temporaryFolder,
} from '../../../../internal/testing/practice.ts';
import { openListening, strokesOf, waitForStrokes } from '../../../../internal/testing/sound.ts';

const FOLDERS = [temporaryFolder(), temporaryFolder()] as const;

const browser = await sharedBrowser();
let packs: readonly string[];

beforeAll(async () => {
  const [first, second] = FOLDERS;
  const changed = PRACTICE_LESSON.replace('title: First swing', 'title: First swing, once more');
  packs = [
    buildPack(PRACTICE_LESSON, first.path),
    await makeHearingPack(changed, second.path, 'first-swing'),
  ];
});

afterAll(async () => {
  for (const folder of FOLDERS) folder.remove();
});

/** Waits until the worker has everything. */
async function kept(page: Page): Promise<void> {
  await page.evaluate(() => navigator.serviceWorker.ready);
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
}

async function visit(host: StaticHost): Promise<Page> {
  const page = await openListening(browser, host.url);
  await page.getByRole('heading', { level: 1 }).waitFor();
  await kept(page);
  return page;
}

it('[ST40] opens on a plain host with every exercise and file, and without the engraver', async () => {
  const host = await hostFolder(packs[0] as string);
  const page = await visit(host);
  expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe('First swing');
  expect(await page.locator('[data-part="exercises"] li').count()).toBe(3);
  const files = await page
    .locator('#downloads a')
    .evaluateAll((links) => links.map((link) => (link as HTMLAnchorElement).getAttribute('href') ?? ''));
  // definition: the sheet, MIDI, MusicXML and lesson file; of each exercise a recording, MIDI and MusicXML
  expect(files.length).toBe(4 + 3 * 3);
  for (const file of files) expect((await page.request.get(new URL(file, host.url).href)).status()).toBe(200);
  expect([...host.sent.keys()].filter((path) => /verovio|wasm/i.test(path))).toEqual([]);
  await host.stop();
});

it('[ST47] opens, shows every exercise and plays when the host is gone', async () => {
  const host = await hostFolder(packs[0] as string);
  const page = await visit(host);
  await host.stop();
  await page.reload();
  await page.getByRole('heading', { name: 'First swing' }).waitFor();
  for (const number of [1, 2, 3]) {
    await page.goto(`${host.url}#${number}`);
    await page.locator('[data-part="picture"] .notehead').first().waitFor({ state: 'attached' });
  }
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await waitForStrokes(page, 20);
  expect((await strokesOf(page)).length).toBeGreaterThanOrEqual(20);
  const pdf = await page.evaluate(async () => (await fetch('files/sheet.pdf')).status);
  expect(pdf).toBe(200);
  // definition: recordings are fetched when a student asks for them
  const recording = await page.evaluate(() =>
    fetch('files/audio/01.mp3').then(
      () => 'kept',
      () => 'not kept',
    ),
  );
  expect(recording).toBe('not kept');
});

it('[ST48] takes a newer pack over whole and when asked, and keeps what the student chose and did', async () => {
  const host = await hostFolder(packs[0] as string);
  const page = await visit(host);
  await page.goto(`${host.url}#2`);
  await page.locator('input[type="range"]').fill('77');
  await page.evaluate(
    () =>
      new Promise((resolve, reject) => {
        const request = indexedDB.open('of a student', 1);
        request.onupgradeneeded = () => request.result.createObjectStore('log');
        request.onerror = reject;
        request.onsuccess = () => {
          const change = request.result.transaction('log', 'readwrite');
          change.objectStore('log').put('practised', 'entry');
          change.oncomplete = resolve;
        };
      }),
  );
  host.show(packs[1] as string);
  await page.reload();
  await page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.update());
  const line = page.locator('[data-part="notice"]').getByText('There is a newer version of this sheet.');
  await line.waitFor();
  // definition: until the student takes it, everything is of the version that was open
  const before = await page.evaluate(async () => (await (await fetch('pack.json')).json()).lesson.title);
  expect(before).toBe('First swing');
  await page.getByRole('button', { name: 'Use it now' }).click();
  await page.waitForFunction(async () => {
    const pack = await (await fetch('pack.json')).json();
    return pack.lesson.title === 'First swing, once more' && document.title.includes('once more');
  });
  const caches = await page.evaluate(async () => (await window.caches.keys()).length);
  // definition: the old version is forgotten
  expect(caches).toBe(1);
  expect(await page.locator('[data-part="tempo"] strong').textContent()).toBe('77');
  const entry = await page.evaluate(
    () =>
      new Promise((resolve) => {
        const request = indexedDB.open('of a student', 1);
        request.onsuccess = () => {
          const got = request.result.transaction('log').objectStore('log').get('entry');
          got.onsuccess = () => resolve(got.result);
        };
      }),
  );
  expect(entry).toBe('practised');
  await host.stop();
});
