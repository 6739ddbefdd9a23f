/**
 * How the practice room opens on a slow phone: a pack of the demo lesson on a plain host that compresses, in Chromium
 * held to a quarter of this computer's speed and a line of 1.6 Mbit/s with 150 ms to and fro; what it weighs before
 * anything sounds; and how much more memory the page keeps for each minute that it plays.
 *
 * Conventions: a sheet is open when its title and every exercise stand on it and the tiles of the first six are drawn;
 * today's plan stands when its list does. Times are medians.
 */

import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { tmpdir } from 'node:os';
import { extname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { median } from '@shedbook/signal';
import { chromium } from 'playwright-core';
import { chromiumPath } from '../internal/testing/programs.mjs';
import { addressOfServer } from './material.mjs';

export const name = 'practice room: opening a pack on a slow phone';

const CLI = fileURLToPath(new URL('../bin/shedbook.mjs', import.meta.url));
const LESSON = fileURLToPath(new URL('../demo/first-swing.lesson.yaml', import.meta.url));
const CHROMIUM = await chromiumPath();
const ARGS = ['--no-sandbox', '--disable-gpu', '--autoplay-policy=no-user-gesture-required'];
const PHONE = { viewport: { width: 390, height: 844 }, deviceScaleFactor: 2, isMobile: true, hasTouch: true };
const SLOWER = 4;
const LINE = { offline: false, latency: 150, downloadThroughput: 1.6e6 / 8, uploadThroughput: 750e3 / 8 };
const ROUNDS = 5;
const PLAY_SECONDS = 45;
/** Until what is made only once has been made. */
const WARM_SECONDS = 75;

const TYPES = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.webmanifest': 'application/manifest+json',
  '.woff2': 'font/woff2',
};

/** A host that compresses once and tells what it sent. */
async function startHost(folder) {
  const kept = new Map();
  const sent = new Map();
  const read = (file) => {
    const raw = readFileSync(file);
    const packs = extname(file) !== '.woff2';
    return { body: packs ? gzipSync(raw) : raw, packs };
  };
  const server = createServer((request, response) => {
    const path = new URL(request.url ?? '/', 'http://host').pathname.slice(1) || 'index.html';
    const file = join(folder, path);
    if (!existsSync(file) || !statSync(file).isFile()) return response.writeHead(404).end();
    if (!kept.has(path)) kept.set(path, read(file));
    const { body, packs } = kept.get(path);
    sent.set(path, body.length);
    response.writeHead(200, {
      'content-type': TYPES[extname(path)] ?? 'application/octet-stream',
      ...(packs ? { 'content-encoding': 'gzip' } : {}),
    });
    return response.end(body);
  });
  await new Promise((resolve) => {
    server.listen(0, '127.0.0.1', () => resolve(server));
  });
  return { url: addressOfServer(server), sent, stop: () => server.close() };
}

async function slowDown(page) {
  const devtools = await page.context().newCDPSession(page);
  await devtools.send('Network.enable');
  await devtools.send('Network.emulateNetworkConditions', LINE);
  await devtools.send('Emulation.setCPUThrottlingRate', { rate: SLOWER });
}

/** Milliseconds from asking for the page to the sheet being open, and to today's plan standing on it. */
async function openSheet(page, url) {
  await page.goto(url, { waitUntil: 'commit' });
  const when = async (look) => {
    const seen = await page.waitForFunction(look, undefined, { polling: 20, timeout: 60_000 });
    return seen.jsonValue();
  };
  const sheet = await when(() => {
    const isDrawn = (each) => each instanceof HTMLImageElement && each.complete && each.naturalWidth > 0;
    const pictures = [...document.querySelectorAll('[data-part="exercises"] img')].slice(0, 6);
    const drawn = pictures.length === 6 && pictures.every(isDrawn);
    return drawn ? performance.now() : null;
  });
  const plan = await when(() =>
    document.querySelector('[data-part="plan-item"] a') ? performance.now() : null,
  );
  return { sheet, plan };
}

async function firstVisits(browser, host) {
  const times = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    const context = await browser.newContext(PHONE);
    const page = await context.newPage();
    await slowDown(page);
    times.push(await openSheet(page, host.url));
    await context.close();
  }
  return { sheet: median(times.map((each) => each.sheet)), plan: median(times.map((each) => each.plan)) };
}

async function laterVisits(browser, host) {
  const context = await browser.newContext(PHONE);
  const page = await context.newPage();
  await openSheet(page, host.url);
  await page.evaluate(() => navigator.serviceWorker.ready);
  await slowDown(page);
  const times = [];
  for (let round = 0; round < ROUNDS; round += 1) times.push(await openSheet(page, host.url));
  await context.close();
  return median(times.map((each) => each.sheet));
}

/** Kilobytes that come over the wire until an exercise stands ready to be played. */
async function weigh(browser, host) {
  host.sent.clear();
  const context = await browser.newContext({ ...PHONE, serviceWorkers: 'block' });
  const page = await context.newPage();
  await openSheet(page, host.url);
  await page.locator('[data-part="exercise"]').nth(1).click();
  await page.locator('[data-part="picture"] .notehead').first().waitFor({ state: 'attached' });
  await context.close();
  const before = [...host.sent].filter(([path]) => !/worklet|worker/.test(path));
  return before.reduce((sum, [, bytes]) => sum + bytes, 0) / 1000;
}

async function heapAfterCollecting(devtools) {
  await devtools.send('HeapProfiler.collectGarbage');
  const { usedSize } = await devtools.send('Runtime.getHeapUsage');
  return usedSize;
}

/** Kilobytes that the page's heap grows in a minute of playing. */
async function growth(browser, host) {
  const context = await browser.newContext(PHONE);
  const page = await context.newPage();
  const devtools = await context.newCDPSession(page);
  await page.goto(`${host.url}#13`);
  await page.locator('[data-part="play"]').click();
  await page.waitForTimeout(WARM_SECONDS * 1000);
  const before = await heapAfterCollecting(devtools);
  await page.waitForTimeout(PLAY_SECONDS * 1000);
  const after = await heapAfterCollecting(devtools);
  await context.close();
  return ((after - before) / 1000) * (60 / PLAY_SECONDS);
}

export async function run() {
  const folder = mkdtempSync(join(tmpdir(), 'shedbook-bench-'));
  const browser = await chromium.launch({ executablePath: CHROMIUM, args: ARGS });
  try {
    spawnSync(process.execPath, [CLI, 'build', LESSON, '--out', folder, '--pack']);
    const host = await startHost(join(folder, 'practice'));
    const weight = await weigh(browser, host);
    const first = await firstVisits(browser, host);
    const rows = [
      { what: 'sent before anything sounds, compressed', value: weight, unit: 'kB' },
      { what: 'first visit: the sheet is open', value: first.sheet, unit: 'ms' },
      { what: "first visit: today's plan stands too", value: first.plan, unit: 'ms' },
      { what: 'later visits, from the worker', value: await laterVisits(browser, host), unit: 'ms' },
      {
        what: 'heap of the page after a minute more of playing',
        value: await growth(browser, host),
        unit: 'kB',
      },
    ];
    host.stop();
    return rows;
  } finally {
    await browser.close();
    rmSync(folder, { recursive: true, force: true });
  }
}
