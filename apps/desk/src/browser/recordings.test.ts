import { execFileSync } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import { Bpm, formNamed, type Lesson, parseLesson, perform } from '@shedbook/core';
import { writeMidi } from '@shedbook/exchange';
import { makeRecording, planRecordings, RECORDING_RATE_HZ } from '@shedbook/pack';
import { RECORDING_LUFS } from '@shedbook/sound';
import { unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { findings } from '../../../../internal/testing/axe.ts';
import {
  addressOf,
  openWindow,
  PATIENCE_MS,
  sharedBrowser,
  startDesk,
} from '../../../../internal/testing/browser.ts';
import { keptKit } from '../../../../internal/testing/kept-kit.mjs';

const browser = await sharedBrowser();

/** What a browser gives a page where a file falls on it. */
async function drop(page: Page, name: string, content: Buffer): Promise<void> {
  const transfer = await page.evaluateHandle(
    ([text, called]) => {
      const bytes = Uint8Array.from(atob(text as string), (character) => character.charCodeAt(0));
      const data = new DataTransfer();
      data.items.add(new File([bytes], called as string, { type: 'audio/wav' }));
      return data;
    },
    [content.toString('base64'), name],
  );
  await page.dispatchEvent('body', 'drop', { dataTransfer: transfer });
}

it('[ST900] [ST5400] records exercises in any form, layer and format, and leaves off when told to', async () => {
  const { url } = await startDesk();
  const page = await openWindow(browser, await addressOf(url, 'First swing', 'print'));
  await page.getByRole('button', { name: 'Make recordings' }).click();
  const form = page.locator('[data-part="recordings"]');
  // all of them in every stage take long: they are left off
  await form
    .getByRole('combobox', { name: 'Layers' })
    .selectOption({ label: 'a recording of each layer joining in' });
  await form.getByRole('button', { name: 'Make 24 recordings' }).click();
  await form.getByRole('progressbar').waitFor();
  await form.getByRole('button', { name: 'Cancel' }).click();
  await form.getByText('Cancelled; nothing was kept.').waitFor();
  const threads: string[] = [];
  page.on('worker', (worker) => threads.push(worker.url()));
  // library: axe-core 4.14, every rule that it runs by default
  expect(await findings(page)).toEqual([]);
  await form.getByText('some', { exact: true }).click();
  await form.getByRole('combobox', { name: 'Layers' }).selectOption({ label: 'all' });
  await form.getByRole('combobox', { name: 'Form' }).selectOption({ index: 1 });
  await form.getByRole('spinbutton', { name: 'Tempo' }).fill('120');
  await form.getByText('FLAC', { exact: true }).click();
  // whoever is counted to hears the click that is counted on
  await form.getByText('Count aloud over it').click();
  expect(await form.getByRole('checkbox', { name: 'Click' }).isChecked()).toBe(true);
  const saving = page.waitForEvent('download', { timeout: PATIENCE_MS });
  await form.getByRole('button', { name: 'Make the recording' }).click();
  const saved = await saving;
  expect(saved.suggestedFilename()).toBe('first-swing-01.flac');
  // standard: RFC 9639, section 6: the first four bytes
  expect((await readFile(await saved.path())).subarray(0, 4).toString()).toBe('fLaC');
  const raw = ['-v', 'error', '-i', await saved.path(), '-f', 'f32le', '-ac', '1', '-t', '0.2', '-'];
  const begins = new Float32Array(Uint8Array.from(execFileSync('ffmpeg', raw)).buffer);
  const loudest = (from: number, to: number) =>
    begins
      .subarray(from * RECORDING_RATE_HZ, to * RECORDING_RATE_HZ)
      .reduce((most, each) => Math.max(most, Math.abs(each)), 0);
  // definition: the first click comes after 0.2 s, and "one" is felt on it 84 ms after it has begun; dither lies under −100 dB
  expect(loudest(0, 0.11)).toBeLessThan(1e-5);
  expect(loudest(0.13, 0.19)).toBeGreaterThan(0.01);
  // several come as one file, compressed where that was chosen
  await form.getByText('MP3', { exact: true }).click();
  await form.locator('label', { hasText: 'Exercise 2' }).first().click();
  const savingTwo = page.waitForEvent('download', { timeout: PATIENCE_MS });
  await form.getByRole('button', { name: 'Make 2 recordings' }).click();
  const zip = unzipSync(await readFile(await (await savingTwo).path()));
  expect(Object.keys(zip)).toEqual(['first-swing-01.mp3', 'first-swing-02.mp3']);
  // definition: who has the kit at hand makes the next recordings too
  expect(threads.filter((url) => url.includes('recording.worker'))).toHaveLength(1);
});

it('[ST2000] [ST5402] says how long and large a film will be before it is made, how far it is, and leaves off when told to', async () => {
  const { url } = await startDesk();
  const page = await openWindow(browser, await addressOf(url, 'First swing', 'print'));
  await page.getByRole('button', { name: 'Make a film' }).click();
  const form = page.locator('[data-part="films"]');
  await form.getByText(/ of film, 1920 × 1080, about .* MB$/).waitFor({ timeout: PATIENCE_MS });
  await form.getByText('Count aloud over a click').click();
  await form.getByText('tall', { exact: true }).click();
  await form.getByText(/ of film, 1080 × 1920, about /).waitFor({ timeout: PATIENCE_MS });
  await form.getByRole('button', { name: 'Make the film' }).click();
  await form.getByRole('progressbar').waitFor({ timeout: PATIENCE_MS });
  // library: axe-core 4.14, every rule that it runs by default
  expect(await findings(page)).toEqual([]);
  await form.getByRole('button', { name: 'Cancel' }).click();
  await form.getByText('Cancelled; nothing was kept.').waitFor();
  await form.getByRole('button', { name: 'Make the film' }).waitFor();
  await page.getByRole('button', { name: 'Done' }).click();
  // one of each exercise for the pack
  const home = page.locator('section', {
    has: page.getByRole('heading', { name: 'For practising at home' }),
  });
  await home.getByText('A film of each exercise').click();
  await home.getByText(/ of film, 1920 × 1080, about .* MB$/).waitFor({ timeout: PATIENCE_MS });
  await home.getByRole('button', { name: 'Take-home pack (ZIP)' }).click();
  await home.getByText('Film 1 of 24 …').waitFor({ timeout: PATIENCE_MS });
  await home.getByRole('progressbar').waitFor();
  await home.getByRole('button', { name: 'Cancel' }).click();
  await home.getByText('Cancelled; nothing was kept.').waitFor();
  await home.getByRole('button', { name: 'Take-home pack (ZIP)', disabled: false }).waitFor();
});

async function demoLesson(file: string): Promise<Lesson> {
  const text = await readFile(new URL(`../../../../demo/${file}`, import.meta.url), 'utf8');
  return parseLesson(text, file).lesson as Lesson;
}

/** An exercise of a demo lesson as its model sounds at a tempo. */
async function modelOf(file: string, exercise: number, bpm: number, formName = 'loop'): Promise<Buffer> {
  const lesson = await demoLesson(file);
  const form = formNamed(lesson, formName);
  const asked = { mute: [], dry: false, loudnessLufs: RECORDING_LUFS, click: null };
  const request = {
    ...asked,
    format: 'wav',
    exercises: [exercise],
    layers: [9],
    bpm: Bpm(bpm),
    form,
  } as const;
  const kit = keptKit({ sampleRateHz: RECORDING_RATE_HZ });
  const [planned] = planRecordings(lesson, request);
  return Buffer.from((await makeRecording(lesson, planned!, request, kit)).content as Uint8Array);
}

let first: Promise<Buffer> | null = null;

/** The first exercise of First swing, made once for the tests that bring it in. */
function firstAt120(): Promise<Buffer> {
  first ??= modelOf('first-swing.lesson.yaml', 1, 120);
  return first;
}

it('[ST3601] [ST5401] a film follows a recording of an exercise that is added, heard and told with its faults', async () => {
  const { url } = await startDesk();
  const page = await openWindow(browser, await addressOf(url, 'First swing', 'print'));
  await page.getByRole('button', { name: 'Make a film' }).click();
  const form = page.locator('[data-part="films"]');
  await form.getByText('some', { exact: true }).click();
  await form.getByText('Over your own playing').click();
  const played = await firstAt120();
  const file = { name: 'one.wav', mimeType: 'audio/wav', buffer: played };
  await form.locator('input[type="file"]').setInputFiles(file);
  const row = form.locator('[data-part="performance"]');
  await row.getByText('Exercise 1: one.wav').waitFor();
  await row.getByText(/without a fault\.$/).waitFor({ timeout: 2 * PATIENCE_MS });
  await form.getByText('half as fast', { exact: true }).click();
  const plan = form.getByText(/ of film, 1920 × 1080, about /);
  await plan.waitFor({ timeout: PATIENCE_MS });
  const slow = await plan.textContent();
  // library: axe-core 4.14, every rule that it runs by default
  expect(await findings(page)).toEqual([]);
  await form.getByText('as played', { exact: true }).click();
  await expect.poll(() => plan.textContent().catch(() => slow), { timeout: PATIENCE_MS }).not.toBe(slow);
  await row.getByRole('button', { name: 'Take one.wav out' }).click();
  expect(await row.count()).toBe(0);
  await page.getByRole('button', { name: 'Done' }).click();
  // for students it is kept with the lesson, and erased again
  const home = page.locator('section', {
    has: page.getByRole('heading', { name: 'For practising at home' }),
  });
  await home.getByText('Your own playing for students').click();
  await home.locator('input[type="file"]').setInputFiles(file);
  await home.getByRole('button', { name: 'Keep with the lesson' }).click({ timeout: 2 * PATIENCE_MS });
  const kept = home.locator('[data-part="kept-demonstrations"] li');
  await kept.getByText(/^Exercise 1, /).waitFor({ timeout: PATIENCE_MS });
  expect(await home.locator('[data-part="performance"]').count()).toBe(0);
  expect(await findings(page)).toEqual([]);
  await page.reload();
  await home.getByText('Your own playing for students').click();
  await kept.getByRole('button', { name: 'Erase your playing of exercise 1' }).click();
  await expect.poll(() => kept.count()).toBe(0);
});

/** The same as a kit would send it. */
async function notesOf(file: string, exercise: number, bpm: number): Promise<Buffer> {
  const lesson = await demoLesson(file);
  const performance = perform(lesson, { exercise, form: formNamed(lesson, 'loop')!, bpm: Bpm(bpm) });
  return Buffer.from(writeMidi(performance, { meter: lesson.meter, title: 'Monday' }));
}

/** A desk on which a recording is dropped, the student is added, and the lesson is chosen that it is of. */
async function dropForKaito(recording: Buffer): Promise<Page> {
  const { url } = await startDesk();
  const page = await openWindow(browser, url);
  await page.locator('[data-part="lesson-card"]').nth(4).waitFor();
  await drop(page, 'monday.wav', recording);
  await page.getByText('monday.wav: whose recording is it? Add the student; it waits here.').waitFor();
  await page.getByRole('button', { name: 'New student' }).click();
  await page.getByRole('textbox', { name: 'Name' }).fill('Kaito');
  await page.keyboard.press('Enter');
  const take = page.locator('[data-part="take-form"]');
  await take.getByRole('combobox', { name: 'Lesson' }).selectOption({ label: 'First swing' });
  return page;
}

it('[ST901] hears a recording that is dropped on the desk, tells what it heard, and keeps it with the student', async () => {
  const page = await dropForKaito(await firstAt120());
  const take = page.locator('[data-part="take-form"]');
  await take.getByRole('button', { name: 'Listen' }).click();
  await page.locator('[data-part="take-form"][data-at="heard"]').waitFor({ timeout: 2 * PATIENCE_MS });
  // definition: what was recorded is what is written, stroke by stroke
  await take.getByText(/^All \d+ strokes are there, and no others\.$/).waitFor();
  await take.getByText('The tempo holds at 120.').waitFor();
  await take.getByRole('img', { name: /First swing · exercise 1/ }).waitFor();
  expect(await findings(page)).toEqual([]);
  await take.getByRole('button', { name: 'Keep with Kaito' }).click();
  await page.getByText('Kept with Kaito.').waitFor();
  await page.reload();
  const kept = page.locator('[data-part="heard-takes"]');
  await kept.getByText(/First swing · exercise 1/).click();
  await kept.getByText(/^All \d+ strokes are there, and no others\.$/).waitFor();
  await kept.getByRole('img').waitFor();
});

it('[ST3901] finds the exercise that was played, and hears it as that where another was chosen', async () => {
  const { url } = await startDesk();
  const page = await openWindow(browser, new URL('/students', url).href);
  await page.getByRole('button', { name: 'New student' }).click();
  await page.getByRole('textbox', { name: 'Name' }).fill('Kaito');
  await page.keyboard.press('Enter');
  const take = page.locator('[data-part="take-form"]');
  await page.getByRole('button', { name: 'Add a recording or a practice log' }).waitFor();
  await drop(page, 'monday.mid', await notesOf('first-swing.lesson.yaml', 7, 120));
  await take.getByRole('combobox', { name: 'Lesson' }).selectOption({ label: 'First swing' });
  const exercise = take.getByRole('combobox', { name: 'Exercise' });
  expect(await exercise.inputValue()).toBe('');
  await take.getByRole('button', { name: 'Listen' }).click();
  // definition: exercise 7 was played
  await take.getByText('Exercise 7 was played.').waitFor();
  expect(await exercise.inputValue()).toBe('7');
  await take.getByRole('img', { name: /First swing · exercise 7/ }).waitFor();
  await exercise.selectOption('3');
  await take.getByRole('button', { name: 'Listen' }).click();
  await take.getByRole('button', { name: 'Hear it as exercise 7' }).click();
  await take.getByText('The tempo holds at 120.').waitFor();
  expect(await exercise.inputValue()).toBe('7');
});

it('[ST3100] hears a recording in the form that was played, and keeps what was heard', async () => {
  const page = await dropForKaito(await modelOf('first-swing.lesson.yaml', 7, 120, 'four and two'));
  const take = page.locator('[data-part="take-form"]');
  const heard = page.locator('[data-part="take-form"][data-at="heard"]');
  const form = take.getByRole('combobox', { name: 'Form' });
  await take.getByRole('combobox', { name: 'Exercise' }).selectOption('7');
  await take.getByRole('button', { name: 'Listen' }).click();
  await heard.waitFor({ timeout: 2 * PATIENCE_MS });
  // definition: four bars of the exercise and two of time were recorded
  expect(await form.inputValue()).toBe('four and two');
  // what was heard is of that form: another choice takes it away
  await form.selectOption('loop');
  await expect.poll(() => take.getByRole('button', { name: 'Keep with Kaito' }).count()).toBe(0);
  await take.getByRole('button', { name: 'Listen' }).click();
  await take.getByText('In the form “four and two” nothing is wrong with it: was that one meant?').waitFor();
  await take.getByRole('button', { name: 'Hear it as “four and two”' }).click();
  await take.getByText('The tempo holds at 120.').waitFor();
  expect(await form.inputValue()).toBe('four and two');
});
