import { readFile } from 'node:fs/promises';
import { Bpm, Hertz } from '@shedbook/core';
import { listen } from '@shedbook/listen';
import { strFromU8, unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { findings } from '../../../../internal/testing/axe.ts';
import { PATIENCE_MS, sharedBrowser } from '../../../../internal/testing/browser.ts';
import {
  callClean,
  formOnce,
  HEARING_LESSON,
  lessonOf,
  makeHearingPack,
  openWithDevices,
  playLoop,
  soundOf,
  stopAfterRound,
  willPlay,
} from '../../../../internal/testing/hearing.ts';
import { hostFolder, type StaticHost, temporaryFolder } from '../../../../internal/testing/practice.ts';

const lesson = lessonOf(HEARING_LESSON);
const BPM = 160;

const browser = await sharedBrowser();
let host: StaticHost;
const folder = temporaryFolder();
const renewed = temporaryFolder();

beforeAll(async () => {
  host = await hostFolder(await makeHearingPack(HEARING_LESSON, folder.path));
  const swapped = HEARING_LESSON.replace(
    '  - x.. ..x x.x ...\n  - ..x ..x x.. x..',
    '  - ..x ..x x.. x..\n  - x.. ..x x.x ...',
  );
  await makeHearingPack(swapped, renewed.path);
});

afterAll(async () => {
  await host.stop();
  folder.remove();
  renewed.remove();
});

/** Plays one round of exercise 1 into the microphone, and goes on. */
async function playIntoMicrophone(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Use the microphone' }).click();
  await page.locator('[data-ear="on"]').waitFor();
  const sound = soundOf([playLoop(lesson, 1, BPM, () => ({ lateMs: 0 }))], 3);
  await willPlay(page, sound, BPM);
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await page.locator('[data-part="rounds"] li').first().waitFor();
}

/** Plays one round of exercise 1 into the microphone and keeps the take. */
async function recordTake(page: Page): Promise<void> {
  await stopAfterRound(page);
  await playIntoMicrophone(page);
  await page.getByRole('button', { name: 'Keep this take' }).click();
  await page.getByText('The take is kept.').waitFor();
}

it('[ST85] keeps a take, lets it be heard beside its model, sends it, deletes it and brings it back', async () => {
  const page = await openWithDevices(browser, `${host.url}#1`);
  await recordTake(page);
  await page.goto(host.url);
  await page.reload();
  await page.getByRole('heading', { name: 'Takes' }).click();
  const row = page.locator('[data-part="take"]');
  expect(await row.textContent()).toMatch(/Exercise 1.*160 bpm/);
  const said = await page.locator('[data-part="takes-view"]').textContent();
  // A busy machine is slow to stop, and a longer take is said in megabytes.
  const [, used = '', unit] = /Takes use ([\d.]+) (kB|MB)/.exec(said ?? '') ?? [];
  await row.getByRole('button', { name: 'Listen', exact: true }).click();
  await page.locator('[data-part="listener"][data-state="playing"]').waitFor({ timeout: PATIENCE_MS });
  await row.getByText('The model').click();
  expect(await page.locator('[data-part="listener"]').getAttribute('data-state')).toBe('playing');
  await row.getByRole('button', { name: 'Stop', exact: true }).click();
  const download = page.waitForEvent('download');
  await row.getByRole('button', { name: 'Save for your teacher' }).click();
  const file = await download;
  expect(file.suggestedFilename()).toMatch(/^hearing-1-\d{8}-\d{6}\.zip$/);
  const files = unzipSync(new Uint8Array(await readFile(await file.path())));
  const report = JSON.parse(strFromU8(files['report.json'] ?? new Uint8Array()));
  // definition: x.. ..x x.x over two bars are eight strokes
  expect(report.voices.snare.hits).toBe(8);
  const facts = JSON.parse(strFromU8(files['take.json'] ?? new Uint8Array()));
  const wav = files['take.wav'] ?? new Uint8Array();
  // definition: what a take uses is its sound, a WAV with its header, to the last figure that is said
  const figures = used.split('.')[1]?.length ?? 0;
  expect(used).toBe((wav.length / (unit === 'MB' ? 1e6 : 1000)).toFixed(figures));
  const samples = Float32Array.from(new Int16Array(wav.slice(44).buffer), (value) => value / 32_768);
  const from = Math.round(facts.loops[0].startSeconds * 44_100) - 8000;
  const heard = listen(samples.slice(Math.max(0, from)), Hertz(44_100), {
    ...{ lesson, exercise: 1, form: formOnce(lesson), bpm: Bpm(BPM) },
  });
  expect(heard.report?.alignment.bpm).toBeCloseTo(BPM, -1);
  await row.getByRole('button', { name: 'Delete' }).click();
  await expect.poll(() => row.count()).toBe(0);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect.poll(() => row.count()).toBe(1);
  await page.reload();
  await page.getByRole('heading', { name: 'Takes' }).click();
  await row.waitFor();
});

/** Keeps the take in hand. @returns what its file says of it, beside its sound */
async function keepInHand(page: Page) {
  await page.locator('[data-part="take-in-hand"]').getByRole('button', { name: 'Keep this take' }).click();
  await page.getByText('The take is kept.').waitFor();
  await page.goto('about:blank');
  await page.goto(host.url);
  await page.getByRole('heading', { name: 'Takes' }).click();
  const download = page.waitForEvent('download');
  const row = page.locator('[data-part="take"]').first();
  await row.getByRole('button', { name: 'Save for your teacher' }).click();
  const files = unzipSync(new Uint8Array(await readFile(await (await download).path())));
  const json = (name: string) => JSON.parse(strFromU8(files[name] ?? new Uint8Array()));
  return {
    facts: json('take.json'),
    report: json('report.json'),
    wav: files['take.wav'] ?? new Uint8Array(),
  };
}

/** One clean round was played: its strokes, its place in the recording, and a recording that holds it. */
function expectOneRound({ facts, report, wav }: Awaited<ReturnType<typeof keepInHand>>): void {
  // definition: x.. ..x x.x over two bars are eight strokes
  expect(report.voices.snare.hits).toBe(8);
  expect(facts.verdicts[0]).toMatchObject({ bpm: BPM, verdict: 'clean' });
  expect((wav.length - 44) / 2 / 44_100).toBeGreaterThan(facts.loops[0].endSeconds);
}

it('[ST1800] has the take still in hand where the page was loaded anew while one played', async () => {
  const page = await openWithDevices(browser, `${host.url}#1`);
  await playIntoMicrophone(page);
  await page.reload();
  expectOneRound(await keepInHand(page));
  await page.goto(`${host.url}#1`);
  await page.getByRole('button', { name: 'Use the microphone' }).waitFor();
  expect(await page.getByRole('button', { name: 'Keep this take' }).count()).toBe(0);
});

it('[ST1801] [ST7901] hands over what it heard where the microphone is unplugged', async () => {
  const page = await openWithDevices(browser, `${host.url}#1`);
  await playIntoMicrophone(page);
  await page.evaluate(() => window.deskOfTest.unplug());
  await page.locator('[data-part="refusal"]', { hasText: 'No microphone was found' }).waitFor();
  expect(await page.locator('[data-mark][data-before]').count()).toBeGreaterThan(0);
  expect(await page.locator('[data-mark]:not([data-before])').count()).toBe(0);
  expectOneRound(await keepInHand(page));
});

it('[ST87] logs what was played, also when nobody listens, and a renewed sheet finds it again', async () => {
  const page = await openWithDevices(browser, `${host.url}#1`);
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await callClean(page);
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  await page.goto(host.url);
  const rowText = async () => {
    await page.getByRole('heading', { name: 'What you have played' }).click();
    return page.locator('[data-part="log"] tbody tr').first().textContent();
  };
  expect(await rowText()).toMatch(/^Exercise 1.*160 bpm/);
  host.show(renewed.path);
  try {
    await page.goto('about:blank');
    await page.goto(host.url);
    expect(await rowText()).toMatch(/^Exercise 2.*160 bpm/);
  } finally {
    host.show(folder.path);
  }
});

it('[ST88] lets the log out and in, merged without doubles, and refuses a bad file in words', async () => {
  const page = await openWithDevices(browser, `${host.url}#1`);
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await callClean(page);
  await page.getByRole('link', { name: 'The sheet' }).click();
  await page.getByRole('heading', { name: 'What you have played' }).click();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the log' }).click();
  const text = await readFile(await (await download).path(), 'utf8');
  expect(JSON.parse(text).entries).toHaveLength(1);
  const bring = async (name: string, content: string) => {
    const chooser = page.waitForEvent('filechooser');
    await page.locator('[data-part="log-file"]').click();
    await (await chooser).setFiles({ name, mimeType: 'application/json', buffer: Buffer.from(content) });
  };
  const came = page.locator('[data-part="log-came"]');
  await bring('same.json', text);
  await expect.poll(() => came.textContent()).toContain('Nothing new in this file.');
  const log = JSON.parse(text);
  const other = { ...log.entries[0], id: 'another device 1', device: 'another device' };
  await bring('other.json', JSON.stringify({ ...log, entries: [other] }));
  await expect.poll(() => came.textContent()).toContain('1 entry was added.');
  await bring('broken.json', text.replace('"clean"', '"perfect"'));
  await expect.poll(() => came.textContent()).toContain('broken.json has entries that cannot be read');
  expect(await came.textContent()).toMatch(/Line \d+, column \d+: found "perfect"; expected one of unheard/);
  await bring('notes.json', 'hello');
  await expect.poll(() => came.textContent()).toContain('Line 1, column 1');
  const again = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the log' }).click();
  const kept = JSON.parse(await readFile(await (await again).path(), 'utf8'));
  expect(kept.entries).toHaveLength(2);
});

/** Keeps a take of a second of silence and a log, by the browser's own calls, as pages before this one did. */
async function keepTheOldWay(page: Page, lesson: string): Promise<void> {
  await page.evaluate(async (lesson) => {
    const asked = <T>(request: IDBRequest<T>) =>
      new Promise<T>((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
    const opening = indexedDB.open('shedbook-practice', 1);
    opening.onupgradeneeded = () => {
      for (const [name, keyPath] of [
        ['takes', 'id'],
        ['audio', 'id'],
        ['latencies', 'device'],
        ['notes', 'name'],
      ] as const)
        opening.result.createObjectStore(name, { keyPath });
    };
    const database = await asked(opening);
    const put = (store: string, value: object) =>
      asked(database.transaction(store, 'readwrite').objectStore(store).put(value));
    const startedAt = '2025-11-20T18:30:00+01:00';
    const common = { lesson, exercise: null, form: 'loop', startedAt };
    await put('audio', { id: 'old', audio: new Blob([new Uint8Array(88_244)], { type: 'audio/wav' }) });
    await put('takes', {
      ...{ ...common, id: 'old', lessonTitle: 'First swing', number: null, layers: 1, kind: 'audio' },
      ...{ durationSeconds: 12, latencySeconds: 0, verdicts: [], report: null, refusal: null },
      ...{ loops: [{ startSeconds: 0, endSeconds: 6, bpm: 133 }], audioBytes: 88_244 },
    });
    const entry = { ...common, id: 'first', device: 'device-old', heardBy: 'student', durationSeconds: 720 };
    await put('notes', { name: 'log', log: { version: 1, entries: [{ ...entry, loops: [] }], removed: [] } });
    database.close();
  }, lesson);
}

it('[ST85] opens the takes and the log that a page before this one kept', async () => {
  const page = await openWithDevices(browser, `${host.url}mark.svg`);
  const { id } = (await (await page.request.get(new URL('pack.json', host.url).href)).json()) as {
    readonly id: string;
  };
  await keepTheOldWay(page, id);
  await page.goto(host.url);
  await page.getByRole('heading', { name: 'Takes' }).click();
  const row = page.locator('[data-part="take"]');
  expect(await row.textContent()).toContain('133 bpm');
  await page.getByRole('heading', { name: 'What you have played' }).click();
  expect(await page.locator('[data-part="log"] tbody tr').first().textContent()).toContain('12 min');
  const download = page.waitForEvent('download');
  await row.getByRole('button', { name: 'Save for your teacher' }).click();
  const files = unzipSync(await readFile(await (await download).path()));
  expect(files['take.wav']?.length).toBe(88_244);
  const kept = await page.evaluate(() => indexedDB.databases());
  // definition: an IndexedDB of a higher version could not be opened by the page that a student has at hand offline
  expect(kept).toEqual([{ name: 'shedbook-practice', version: 1 }]);
});

it('[ST152] plays a round of a take slowly against its model while the ball rides its page', async () => {
  const page = await openWithDevices(browser, `${host.url}#1`, {});
  await recordTake(page);
  await page.goto(`${host.url}#`);
  const makers: string[] = [];
  page.on('worker', (worker) => makers.push(...(worker.url().includes('kit.worker') ? [worker.url()] : [])));
  await page.getByRole('heading', { name: 'Takes' }).click();
  await page.getByText('A round in slow motion').click();
  const replay = page.locator('[data-part="replay"]');
  await replay.locator('.notehead').first().waitFor({ state: 'attached' });
  expect(await findings(page)).toEqual([]);
  await replay.getByLabel('How fast').fill('50');
  await replay.getByRole('button', { name: 'Play it slowly' }).click();
  await page.locator('[data-part="replay"][data-state="playing"]').waitFor();
  const { places, seconds } = await replay.evaluate(async (root) => {
    const { context } = window.deskOfTest;
    const now = () => context?.currentTime ?? 0;
    const places = new Set<string>();
    const begun = now();
    while (root.getAttribute('data-state') === 'playing') {
      await new Promise(requestAnimationFrame);
      const ball = [...root.querySelectorAll<SVGElement>('[data-part="ball"]')].find(
        (each) => each.style.visibility === 'visible',
      );
      if (ball) places.add(ball.getAttribute('transform') ?? '');
    }
    return { places: places.size, seconds: now() - begun };
  });
  expect(places).toBeGreaterThan(3);
  // definition: a round of three seconds at half the speed lasts six, and what rings after it
  expect(seconds).toBeGreaterThan(5.5);
  expect(seconds).toBeLessThan(12);
  // definition: two make the kit side by side, and what they made is kept for the next round
  expect(makers).toHaveLength(2);
  await replay.getByRole('button', { name: 'Play it slowly' }).click();
  await page.locator('[data-part="replay"][data-state="playing"]').waitFor();
  expect(makers).toHaveLength(2);
});
