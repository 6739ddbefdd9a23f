/**
 * The list of lessons with a thousand of them, in a real browser: how soon it is there, how much of it stands in the
 * page, whether it can be scrolled without a stall, and how soon a search answers.
 *
 * Conventions: lessons are the demo's, each many times under titles of their own; a window of 1440 by 900; times as the
 * browser's own clock gives them. A frame is what lies between two calls of `requestAnimationFrame`.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { startServer } from '@shedbook/server';
import { nearestQuantile } from '@shedbook/signal';
import { chromium } from 'playwright-core';
import { chromiumPath } from '../internal/testing/programs.mjs';
import { lessonTexts } from './material.mjs';

export const name = 'desk: list of lessons';

const SITE = process.env.SHEDBOOK_SITE ?? fileURLToPath(new URL('../apps/desk/dist/site', import.meta.url));
const DEMO = fileURLToPath(new URL('../demo', import.meta.url));
const LESSONS = 1000;
const ARGS = ['--no-sandbox', '--disable-gpu', '--no-first-run'];

async function fill(url, count) {
  for (const text of lessonTexts(DEMO, count)) {
    await fetch(new URL('/api/lessons', url), {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ text }),
    });
  }
}

/** Runs in the page: notes when the first lesson and its picture are seen, on the clock of the page. */
function watchFirst() {
  const seen = /** @type {any} */ (window);
  const look = () => {
    if (document.querySelector('[data-part="lesson-card"]')) seen.firstCardAt ??= performance.now();
    if (document.querySelector('[data-part="lesson-card"] svg use'))
      seen.firstPictureAt ??= performance.now();
    if (seen.firstPictureAt === undefined) requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
}

/** Runs in the page: scrolls to the end as a wheel does, and tells how long each frame took, in milliseconds. */
function scrollThrough() {
  return new Promise((resolve) => {
    const frames = [];
    let before = performance.now();
    const end = before + 6000;
    const step = () => {
      const now = performance.now();
      frames.push(now - before);
      before = now;
      window.scrollBy(0, 60);
      if (now < end) requestAnimationFrame(step);
      else resolve(frames);
    };
    requestAnimationFrame(step);
  });
}

async function searchMilliseconds(page) {
  const field = page.getByRole('searchbox');
  if ((await field.count()) === 0) return null;
  await field.focus();
  return page.evaluate(async () => {
    const field = /** @type {HTMLInputElement} */ (document.activeElement);
    const start = performance.now();
    // As React listens for it: a change that did not go through the page's own setter.
    Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set?.call(field, 'waltz 46');
    field.dispatchEvent(new Event('input', { bubbles: true }));
    await new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
    return performance.now() - start;
  });
}

async function measure(browser, url) {
  const context = await browser.newContext({ locale: 'en', viewport: { width: 1440, height: 900 } });
  const page = await context.newPage();
  page.setDefaultTimeout(180_000);
  await page.addInitScript(watchFirst);
  await page.goto(url, { waitUntil: 'commit' });
  await page.waitForFunction(() => /** @type {any} */ (window).firstPictureAt !== undefined);
  await page
    .locator('[data-part="lesson-card"]')
    .nth(LESSONS - 1)
    .waitFor({ state: 'attached' });
  const first = await page.evaluate(() => {
    const seen = /** @type {any} */ (window);
    return { card: seen.firstCardAt, picture: seen.firstPictureAt };
  });
  const elements = await page.evaluate(() => document.querySelectorAll('*').length);
  await page.waitForTimeout(1000);
  const frames = await page.evaluate(scrollThrough);
  await page.evaluate(() => window.scrollTo(0, 0));
  const search = await searchMilliseconds(page);
  await context.close();
  return { ...first, elements, frames, search };
}

/** Everything, on one desk. */
export async function run() {
  const dataDir = mkdtempSync(join(tmpdir(), 'shedbook-bench-'));
  const server = await startServer({ port: 0, dataDir, staticDir: SITE });
  const browser = await chromium.launch({ executablePath: await chromiumPath(), args: ARGS });
  try {
    await fill(server.url, LESSONS);
    const start = performance.now();
    await (await fetch(new URL('/api/shelf', server.url))).arrayBuffer();
    const cold = (performance.now() - start) / 1000;
    const { card, picture, elements, frames, search } = await measure(browser, server.url);
    const list = `list of ${LESSONS} lessons`;
    return [
      { what: `${list}: summed up once, after all came in`, value: cold, unit: 's' },
      { what: `${list}: first lesson seen`, value: card / 1000, unit: 's' },
      { what: `${list}: first picture seen`, value: picture / 1000, unit: 's' },
      { what: `${list}: elements in the page`, value: elements, unit: '' },
      {
        what: `${list}: frame while scrolling, 98 % of ${frames.length}`,
        value: nearestQuantile(frames, 0.98),
        unit: 'ms',
      },
      { what: `${list}: longest frame while scrolling`, value: Math.max(...frames), unit: 'ms' },
      ...(search === null
        ? []
        : [{ what: `${list}: searched, to the next paint`, value: search, unit: 'ms' }]),
    ];
  } finally {
    await browser.close();
    await server.close();
    rmSync(dataDir, { recursive: true, force: true });
  }
}
