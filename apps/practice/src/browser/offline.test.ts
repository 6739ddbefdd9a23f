import { cpSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it, onTestFinished } from 'vitest';
import { findings } from '../../../../internal/testing/axe.ts';
import { sharedBrowser } from '../../../../internal/testing/browser.ts';
import { layPack } from '../../../../internal/testing/engines/site.ts';
import { makeHearingPack } from '../../../../internal/testing/hearing.ts';
import {
  buildPack,
  hostFolder,
  PRACTICE_LESSON,
  playOnForLog,
  type StaticHost,
  temporaryFolder,
} from '../../../../internal/testing/practice.ts';
import { openListening, strokesOf, waitForStrokes } from '../../../../internal/testing/sound.ts';

const FOLDERS = [temporaryFolder(), temporaryFolder()] as const;

const CHANGED_LESSON = PRACTICE_LESSON.replace('title: First swing', 'title: First swing, once more');

const browser = await sharedBrowser();
let packs: readonly string[];

beforeAll(async () => {
  const [first, second] = FOLDERS;
  packs = [
    buildPack(PRACTICE_LESSON, first.path),
    await makeHearingPack(CHANGED_LESSON, second.path, 'first-swing'),
  ];
});

afterAll(async () => {
  for (const folder of FOLDERS) folder.remove();
});

/** Waits until the worker has everything. */
async function kept(page: Page): Promise<void> {
  await page.evaluate(() => navigator.serviceWorker.ready);
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null, undefined, { polling: 100 });
}

/** The first line of what was played, as the sheet shows it. */
async function played(page: Page, host: StaticHost): Promise<string> {
  await page.goto(host.url);
  await page.getByRole('heading', { name: 'What you have played' }).click();
  return (await page.locator('[data-part="log"] tbody tr').first().textContent()) ?? '';
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

it('[ST1802] runs no script that a host adds to its page', async () => {
  const folder = temporaryFolder();
  onTestFinished(() => folder.remove());
  cpSync(packs[1] as string, folder.path, { recursive: true });
  const start = join(folder.path, 'index.html');
  const added = '<script>window.added = true;</script></body>';
  writeFileSync(
    start,
    readFileSync(start, 'utf8').replace('</body>', () => added),
  );
  const host = await hostFolder(folder.path);
  const page = await openListening(browser, host.url, { bypassCSP: false });
  await page.getByRole('heading', { level: 1 }).waitFor();
  expect(await page.evaluate(() => 'added' in window)).toBe(false);
  await host.stop();
});

it('[ST1803] says that the page broke, instead of leaving nothing, and opens again when it is whole', async () => {
  const folder = temporaryFolder();
  onTestFinished(() => folder.remove());
  cpSync(packs[1] as string, folder.path, { recursive: true });
  const described = join(folder.path, 'pack.json');
  const whole = readFileSync(described, 'utf8');
  writeFileSync(described, JSON.stringify({ ...JSON.parse(whole), downloads: null }));
  const host = await hostFolder(folder.path);
  const page = await openListening(browser, host.url);
  await page.getByRole('heading', { name: 'This page has broken down' }).waitFor();
  // definition: our own fault is told in words, without a trace of the code
  expect(await page.locator('main').textContent()).not.toMatch(/TypeError|null|\.js/);
  expect(await findings(page)).toEqual([]);
  writeFileSync(described, whole);
  await page.getByRole('button', { name: 'Back to the beginning' }).click();
  await page.getByRole('heading', { name: 'First swing, once more' }).waitFor();
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
  // standard: RFC 9110, 14.1.2 (the last bytes) and 15.3.7; ISO 32000-1, 7.5.5: a PDF ends with %%EOF
  const end = await page.evaluate(async () => {
    const answer = await fetch('files/sheet.pdf', { headers: { range: 'bytes=-6' } });
    return [answer.status, (await answer.text()).trim()];
  });
  expect(end).toEqual([206, '%%EOF']);
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
  // A service worker hands out what the host has: here a light kit, since nobody hears how it sounds.
  const [first, second] = [temporaryFolder(), temporaryFolder()];
  onTestFinished(() => {
    for (const folder of [first, second]) folder.remove();
  });
  await layPack(PRACTICE_LESSON, first.path, {});
  await layPack(CHANGED_LESSON, second.path, {});
  const host = await hostFolder(first.path);
  const page = await visit(host);
  await page.goto(`${host.url}#2`);
  await page.locator('input[type="range"]').fill('77');
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await waitForStrokes(page, 20);
  await playOnForLog(page);
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  const before = await played(page, host);
  // definition: one stretch of the second exercise was played
  expect(before).toMatch(/^Exercise 2/);
  const other = await page.context().newPage();
  await other.goto(host.url);
  host.show(second.path);
  await page.reload();
  await page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.update());
  const line = page.locator('[data-part="notice"]').getByText('There is a newer version of this sheet.');
  await line.waitFor();
  // definition: until the student takes it, everything is of the version that was open
  const title = await page.evaluate(async () => (await (await fetch('pack.json')).json()).lesson.title);
  expect(title).toBe('First swing');
  await page.getByRole('button', { name: 'Use it now' }).click();
  const shown = () =>
    page.evaluate(async () => [document.title, (await (await fetch('pack.json')).json()).lesson.title]);
  const newer = 'First swing, once more';
  await expect.poll(shown).toEqual([expect.stringContaining(newer), newer]);
  // definition: the old version is forgotten
  await expect.poll(() => page.evaluate(() => caches.keys())).toHaveLength(1);
  // definition: two pages of one pack show one version
  await other.getByRole('heading', { name: 'First swing, once more' }).waitFor();
  expect(await played(page, host)).toBe(before);
  await page.goto(`${host.url}#2`);
  expect(await page.locator('[data-part="tempo"] strong').textContent()).toBe('77');
  await host.stop();
});

/** Whether a worker that was on its way has come to nothing. */
const cameToNothing = async () => {
  const registration = await navigator.serviceWorker.getRegistration();
  return !registration?.installing && !registration?.waiting;
};

it('[ST1002] keeps nothing of a host that answers with a page of its own, and all of it once the host is well', async () => {
  const lying = temporaryFolder();
  cpSync(packs[0] as string, lying.path, { recursive: true });
  writeFileSync(join(lying.path, 'files/sheet.pdf'), '<h1>Back soon</h1>');
  const host = await hostFolder(lying.path);
  const page = await openListening(browser, host.url);
  await page.getByRole('heading', { level: 1 }).waitFor();
  await expect.poll(() => host.sent.has('files/sheet.pdf')).toBe(true);
  await expect.poll(() => page.evaluate(cameToNothing)).toBe(true);
  expect(await page.evaluate(async () => (await caches.keys()).length)).toBe(0);
  host.show(packs[0] as string);
  await page.reload();
  await kept(page);
  await host.stop();
  // definition: each file opens by its own address, the folder by its start page
  const tile = await page.goto(`${host.url}tiles/01-1.svg`);
  expect(tile?.headers()['content-type']).toBe('image/svg+xml');
  const sheet = async () => (await (await fetch('../files/sheet.pdf')).text()).slice(0, 4);
  // standard: ISO 32000-1, 7.5.2
  expect(await page.evaluate(sheet)).toBe('%PDF');
  await page.goto(`${host.url}?from=home`);
  await page.getByRole('heading', { name: 'First swing' }).waitFor();
  lying.remove();
});

it('[ST1002] stays with the version that it has while half of a newer one is there', async () => {
  const half = temporaryFolder();
  cpSync(packs[0] as string, half.path, { recursive: true });
  cpSync(join(packs[1] as string, 'sw.js'), join(half.path, 'sw.js'));
  const host = await hostFolder(packs[0] as string);
  const page = await visit(host);
  host.show(half.path);
  await page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.update());
  await expect.poll(() => page.evaluate(cameToNothing)).toBe(true);
  await page.reload();
  await page.getByRole('heading', { name: 'First swing', exact: true }).waitFor();
  expect(await page.evaluate(async () => (await caches.keys()).length)).toBe(1);
  await host.stop();
  half.remove();
});
