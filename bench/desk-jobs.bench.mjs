/**
 * Jobs of a teacher's week at the desk, each with touch only, keys only and mouse only, at three sizes, without the
 * view of the text: whether they can be done, and with how many presses.
 *
 * Conventions: presses and steps as `desk-hands.mjs` counts them. Each job starts on a fresh desk with the demo lessons,
 * or with three hundred. A job that cannot be done has no row of presses and counts as not done. `SHEDBOOK_JOBS` names
 * some by a part of their row's text.
 */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Bpm, formNamed } from '@shedbook/core';
import { makeRecording, planRecordings, RECORDING_RATE_HZ } from '@shedbook/pack';
import { startServer } from '@shedbook/server';
import { createKit, RECORDING_LUFS } from '@shedbook/sound';
import { chromium } from 'playwright-core';
import { chromiumPath } from '../internal/testing/programs.mjs';
import { handsOn } from './desk-hands.mjs';
import { JOBS } from './desk-jobs.mjs';
import { lessonOf, lessonTexts } from './material.mjs';

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
const MANY = 300;

/** A folder that the bench fills, gone when it ends. */
const newFolder = () => mkdtempSync(join(tmpdir(), 'shedbook-jobs-'));

/** The first exercise of the swing lesson as its model sounds, as a file in a folder. */
async function recorded(folder) {
  const lesson = lessonOf(readFileSync(join(DEMO, 'first-swing.lesson.yaml'), 'utf8'));
  const request = {
    ...{ mute: [], dry: false, loudnessLufs: RECORDING_LUFS, click: null },
    ...{ format: /** @type {const} */ ('wav'), exercises: [1], layers: [9] },
    ...{ bpm: Bpm(120), form: formNamed(lesson, 'loop') },
  };
  const [planned] = planRecordings(lesson, request);
  if (!planned) throw new Error('Nothing to record');
  const kit = createKit({ sampleRateHz: RECORDING_RATE_HZ });
  const { content } = await makeRecording(lesson, planned, request, kit);
  const file = join(folder, 'monday.wav');
  writeFileSync(file, content);
  return file;
}

/** A folder of lessons for a desk with many. */
function manyIn(folder) {
  lessonTexts(DEMO, MANY).forEach((text, index) => {
    writeFileSync(join(folder, `${String(index).padStart(3, '0')}.lesson.yaml`), text);
  });
  return folder;
}

/** Does a job. @returns how many presses and steps it took. @throws Error where it could not be done */
async function done(browser, { job, means, size, recording, many }) {
  const dataDir = newFolder();
  const seedLessonsDir = job.includes('hundred') ? many : DEMO;
  const server = await startServer({ port: 0, dataDir, staticDir: SITE, seedLessonsDir });
  const locale = job.includes('German') ? 'de' : 'en';
  const context = await browser.newContext({ locale, viewport: size, hasTouch: means === 'touch' });
  const page = await context.newPage();
  page.setDefaultTimeout(90_000);
  try {
    await page.goto(server.url);
    await page.locator('[data-part="lesson-card"]').nth(4).waitFor();
    const hands = handsOn(page, means);
    await JOBS[job]({ page, hands, url: server.url, recording });
    return hands.count;
  } finally {
    await context.close();
    await server.close();
    rmSync(dataDir, { recursive: true, force: true });
  }
}

/** Every way to do the jobs that are asked for. */
function ways() {
  const asked = process.env.SHEDBOOK_JOBS ?? '';
  return Object.keys(JOBS)
    .flatMap((job) => MEANS.flatMap((means) => SIZES.map((size) => ({ job, means, size }))))
    .map((way) => ({ ...way, what: `${way.job}, ${way.means} only, ${way.size.width} wide` }))
    .filter(({ what }) => what.includes(asked));
}

/** Every job by every means at every size. */
export async function run() {
  const browser = await chromium.launch({ executablePath: await chromiumPath(), args: ARGS });
  const [sound, many] = [newFolder(), manyIn(newFolder())];
  const rows = [];
  let failed = 0;
  try {
    const recording = await recorded(sound);
    for (const { what, ...way } of ways()) {
      try {
        const { presses, steps } = await done(browser, { ...way, recording, many });
        rows.push({ what: `${what}: presses`, value: presses, unit: '' });
        if (way.means === 'keys') rows.push({ what: `${what}: steps between them`, value: steps, unit: '' });
        console.log(`  … ${what}: ${presses} presses, ${steps} steps`);
      } catch (error) {
        failed += 1;
        console.log(`  … ${what}: cannot be done: ${error}`);
      }
    }
    return [...rows, { what: 'ways that could not be gone', value: failed, unit: '' }];
  } finally {
    await browser.close();
    for (const folder of [sound, many]) rmSync(folder, { recursive: true, force: true });
  }
}
