/**
 * From sound to notation: a rendered take goes round in Chromium's fake microphone, through the browser's own capture,
 * the ear and the drawing; the time is counted from a stroke's onset as it was captured to the frame that shows it.
 * What a sound card needs on its own way in is not in it.
 *
 * Conventions: milliseconds; a frame lasts about 17 of them.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { tmpdir } from 'node:os';
import { extname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Bpm, Hertz, perform } from '@shedbook/core';
import { createKit, encodeWav, render } from '@shedbook/sound';
import { chromium } from 'playwright-core';
import { chromiumPath } from '../internal/testing/programs.mjs';
import { addressOfServer, barsOnce, lessonOf } from './material.mjs';

export const name = 'hearing: from sound to notation in the browser';

const CLI = fileURLToPath(new URL('../bin/shedbook.mjs', import.meta.url));
const BPM = Bpm(120);
const BARS = 8;
const LISTEN_SECONDS = 30;
const RATE = Hertz(44_100);

const LESSON = `title: Hearing
tempo: ${BPM}
feel: triplet
groove: {ride: x x.x x x.x, hihat-foot: . x . x, bass: x x x x}
balance: {bass: -6}
exercises:
  - x.. ..x x.x ...
`;

const TYPES = { '.html': 'text/html', '.js': 'text/javascript', '.css': 'text/css', '.svg': 'image/svg+xml' };

function serve(folder) {
  const server = createServer((request, response) => {
    const path = new URL(request.url ?? '/', 'http://host').pathname.slice(1) || 'index.html';
    try {
      const body = readFileSync(join(folder, path));
      response
        .writeHead(200, { 'content-type': TYPES[extname(path)] ?? 'application/octet-stream' })
        .end(body);
    } catch {
      response.writeHead(404).end();
    }
  });
  return new Promise((resolve) => {
    server.listen(0, '127.0.0.1', () => resolve(server));
  });
}

/** Eight bars that go round without a seam. */
function renderTake(file) {
  const performance = perform(lessonOf(LESSON), { exercise: 1, form: barsOnce(BARS), bpm: BPM });
  const kit = createKit({ sampleRateHz: RATE, seed: 'a student' });
  const audio = render(performance, { kit, setUp: 'right-handed', tail: 'cut' });
  writeFileSync(file, encodeWav(audio, { format: 'int16' }));
}

async function listen(url, take) {
  const browser = await chromium.launch({
    executablePath: await chromiumPath(),
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--autoplay-policy=no-user-gesture-required',
      '--use-fake-device-for-media-stream',
      '--use-fake-ui-for-media-stream',
      `--use-file-for-fake-audio-capture=${take}`,
    ],
  });
  try {
    const page = await (await browser.newContext({ serviceWorkers: 'block' })).newPage();
    await page.addInitScript(() => {
      window.drawnOfBench = [];
      window.addEventListener('shedbook:heard', (event) => {
        if (event instanceof CustomEvent) window.drawnOfBench.push(event.detail.afterMs);
      });
    });
    await page.goto(`${url}#1`);
    await page.getByRole('button', { name: 'Use the microphone' }).click();
    await page.locator('[data-ear="on"]').waitFor();
    await page.locator('[data-part="play"]').click();
    await page.waitForTimeout(LISTEN_SECONDS * 1000);
    return await page.evaluate(() => window.drawnOfBench);
  } finally {
    await browser.close();
  }
}

export async function run() {
  const folder = mkdtempSync(join(tmpdir(), 'shedbook-bench-'));
  try {
    writeFileSync(join(folder, 'hearing.lesson.yaml'), LESSON);
    spawnSync(process.execPath, [
      CLI,
      'build',
      join(folder, 'hearing.lesson.yaml'),
      '--out',
      folder,
      '--pack',
    ]);
    renderTake(join(folder, 'take.wav'));
    const server = await serve(join(folder, 'practice'));
    const drawn = await listen(addressOfServer(server), join(folder, 'take.wav'));
    server.close();
    const sorted = drawn.toSorted((a, b) => a - b);
    const at = (share) => sorted[Math.floor(share * (sorted.length - 1))] ?? Number.NaN;
    return [
      { what: `strokes drawn in ${LISTEN_SECONDS} s`, value: sorted.length, unit: '' },
      { what: 'from a stroke to the frame that shows it, median', value: at(0.5), unit: 'ms' },
      { what: 'from a stroke to the frame that shows it, 95 of 100', value: at(0.95), unit: 'ms' },
      { what: 'from a stroke to the frame that shows it, the slowest', value: at(1), unit: 'ms' },
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
