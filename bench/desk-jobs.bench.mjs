/**
 * Jobs of a teacher's week at the desk, each with touch only, keys only and mouse only, at three sizes, without the
 * view of the text: whether they can be done, and with how many presses.
 *
 * Conventions: a press is a tap, a click or a key that does something; keys that only walk (Tab, arrows) are counted
 * apart. Each job starts on a fresh desk with the demo lessons. Jobs here: a first sheet, the waltz, a form of one's
 * own, a print in German, a lost connection.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { startServer } from '@shedbook/server';
import { chromium } from 'playwright-core';
import { chromiumPath } from '../internal/testing/programs.mjs';

export const name = 'desk: jobs by hand';

const SITE = process.env.SHEDBOOK_SITE ?? fileURLToPath(new URL('../apps/desk/dist/site', import.meta.url));
const DEMO = fileURLToPath(new URL('../demo', import.meta.url));
const ARGS = ['--no-sandbox', '--disable-gpu', '--no-first-run'];
const SIZES = [
  { width: 1440, height: 900 },
  { width: 820, height: 1180 },
  { width: 390, height: 844 },
];
const MEANS = ['touch', 'keys', 'mouse'];
/** Most stops of a screen that keys walk along. */
const MOST_STOPS = 150;

/** A person who has nothing but touch, keys or a mouse. */
function handsOn(page, means) {
  const count = { presses: 0, steps: 0 };
  const walkTo = async (target, key) => {
    await target.waitFor();
    for (let i = 0; i < MOST_STOPS; i += 1) {
      if (await target.evaluate((element) => element === document.activeElement)) return;
      await page.keyboard.press(key);
      count.steps += 1;
    }
    throw new Error(`No stop for keys: ${target}`);
  };
  const act = async (target, key) => {
    count.presses += 1;
    if (means === 'touch') return target.tap();
    if (means === 'mouse') return target.click();
    await walkTo(target, key);
    return page.keyboard.press('Enter');
  };
  return {
    count,
    press: (target) => act(target, 'Tab'),
    pick: (target) => act(target, 'ArrowDown'),
    /** Sets a stroke where the exercise that is written in begins. */
    strike: async () => {
      const slot = page.locator('[data-part="line-editor"] [data-slot]').first();
      count.presses += 1;
      if (means === 'touch') return slot.tap();
      if (means === 'mouse') return slot.click();
      await walkTo(slot, 'Tab');
      return page.keyboard.press('Space');
    },
  };
}

const button = (page, called) => page.getByRole('button', { name: called, exact: true });
const link = (page, called) => page.getByRole('link', { name: called, exact: true });

async function textOf(page, url) {
  const id = new URL(page.url()).pathname.split('/')[2];
  return (await (await fetch(new URL(`/api/lessons/${id}`, url))).json()).text;
}

/** Waits until what is kept is as it should be. */
async function kept(page, url, isRight) {
  const end = Date.now() + 30_000;
  while (!isRight(await textOf(page, url))) {
    if (Date.now() > end) throw new Error('not kept');
    await page.waitForTimeout(100);
  }
}

async function printed(page, hands, words) {
  await hands.press(link(page, words.print).last());
  await page.locator('[data-part="print-page"]').first().waitFor();
  const file = page.waitForEvent('download');
  await hands.press(link(page, words.download));
  await file;
}

const openSwing = async (page, hands, called = 'Open First swing') => {
  await hands.press(link(page, called));
  await page.locator('[data-part="line-editor"]').first().waitFor();
};

const JOBS = {
  'a first sheet': async ({ page, hands, url }) => {
    await hands.press(button(page, 'New lesson'));
    await page.locator('[data-part="line-editor"]').waitFor();
    const before = await textOf(page, url);
    await hands.strike();
    await kept(page, url, (text) => text !== before);
    await printed(page, hands, { print: 'Print', download: 'Download PDF' });
  },
  'the waltz': async ({ page, hands, url }) => {
    await hands.press(button(page, 'Start from a groove'));
    await hands.pick(page.getByRole('menuitem', { name: /waltz/i }));
    await page.locator('[data-part="line-editor"]').first().waitFor();
    await kept(page, url, (text) => text.includes('meter: 3/4'));
  },
  'a form of one’s own': async ({ page, hands, url }) => {
    await openSwing(page, hands);
    await hands.press(button(page, 'Forms'));
    await hands.press(button(page, 'New form from this one'));
    await hands.press(button(page, 'Add a section to the form'));
    await hands.press(button(page, 'Bars of count-in: one more'));
    await hands.press(button(page, 'Done'));
    await kept(page, url, (text) => text.includes('My form'));
  },
  'a print in German': async ({ page, hands }) => {
    await openSwing(page, hands, 'First swing öffnen');
    await printed(page, hands, { print: 'Drucken', download: 'PDF herunterladen' });
  },
  'a lost connection': async ({ page, hands, url }) => {
    await openSwing(page, hands);
    const before = await textOf(page, url);
    await page.context().setOffline(true);
    await hands.strike();
    await page.waitForTimeout(1500);
    await page.context().setOffline(false);
    await kept(page, url, (text) => text !== before);
  },
};

/** Does a job. @returns how many presses and steps it took. @throws Error where it could not be done */
async function done(browser, job, means, viewport) {
  const dataDir = mkdtempSync(join(tmpdir(), 'shedbook-jobs-'));
  const server = await startServer({ port: 0, dataDir, staticDir: SITE, seedLessonsDir: DEMO });
  const locale = job.includes('German') ? 'de' : 'en';
  const context = await browser.newContext({ locale, viewport, hasTouch: means === 'touch' });
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
  try {
    await page.goto(server.url);
    await page.locator('[data-part="lesson-card"]').nth(4).waitFor();
    const hands = handsOn(page, means);
    await JOBS[job]({ page, hands, url: server.url });
    return hands.count;
  } catch (error) {
    throw new Error(`${job}, ${means} only, ${viewport.width} wide: ${String(error)}`);
  } finally {
    await context.close();
    await server.close();
    rmSync(dataDir, { recursive: true, force: true });
  }
}

/** Every job by every means at every size. */
export async function run() {
  const browser = await chromium.launch({ executablePath: await chromiumPath(), args: ARGS });
  const rows = [];
  try {
    for (const job of Object.keys(JOBS)) {
      for (const means of MEANS) {
        for (const size of SIZES) {
          const { presses, steps } = await done(browser, job, means, size);
          const what = `${job}, ${means} only, ${size.width} wide`;
          rows.push({ what: `${what}: presses`, value: presses, unit: '' });
          if (means === 'keys') rows.push({ what: `${what}: steps between them`, value: steps, unit: '' });
        }
      }
    }
    return rows;
  } finally {
    await browser.close();
  }
}
