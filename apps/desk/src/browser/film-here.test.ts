import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Lesson, parseLesson } from '@shedbook/core';
import { loadEngraver, loadFonts } from '@shedbook/engrave';
import { type AskedFilm, type Film, frameAt, lookFor, planFilm, requestFor } from '@shedbook/film';
import { unzipSync } from 'fflate';
import { expect, it, onTestFinished } from 'vitest';
import {
  addressOf,
  openWindow,
  PATIENCE_MS,
  sharedBrowser,
  startDesk,
} from '../../../../internal/testing/browser.ts';

const browser = await sharedBrowser();

/** Takes FFmpeg away from this process until it is given back. */
async function withoutFfmpeg(): Promise<() => void> {
  const { PATH } = process.env;
  const empty = await mkdtemp(join(tmpdir(), 'shedbook-no-ffmpeg-'));
  process.env['PATH'] = empty;
  const giveBack = () => {
    process.env['PATH'] = PATH;
  };
  onTestFinished(async () => {
    giveBack();
    await rm(empty, { recursive: true });
  });
  return giveBack;
}

/** What was asked of the form, planned in this process. */
async function filmAsked(): Promise<Film> {
  const text = await readFile(new URL('../../../../demo/first-swing.lesson.yaml', import.meta.url), 'utf8');
  const lesson = parseLesson(text, 'first-swing').lesson as Lesson;
  const asked: AskedFilm = {
    ...{ exercises: [1], form: null, bpm: 240, framesPerSecond: 30, buildUp: false, countAloud: false },
    ...{ shape: 'landscape', scheme: 'light', language: 'en', over: null },
  };
  const { resolve } = createRequire(import.meta.url);
  const fonts = await loadFonts((specifier) => readFile(resolve(specifier)));
  const tools = { engraver: await loadEngraver(), fonts };
  return planFilm(requestFor(lesson, asked, []), lookFor(asked), tools, 'en');
}

/** FFmpeg's and ffprobe's answers about a file, as bytes. */
function said(program: 'ffmpeg' | 'ffprobe', args: readonly string[]): Buffer {
  return execFileSync(program, ['-v', 'error', ...args], { maxBuffer: 1 << 28 });
}

/** Pixels from where a film says its ball is to the middle of what is green around there, in one decoded frame. */
function ballError(file: string, film: Film, number: number): number {
  const { ball } = frameAt(film, number);
  const k = film.look.pixelsPerMm;
  const [x, y] = [(ball?.xMm ?? 0) * k, (ball?.yMm ?? 0) * k];
  const side = 80;
  const [left, top] = [Math.round(x) - side / 2, Math.round(y) - side / 2];
  const cut = `select=eq(n\\,${number}),crop=${side}:${side}:${left}:${top}:exact=1`;
  const rgb = said('ffmpeg', [
    '-i',
    file,
    '-vf',
    cut,
    '-frames:v',
    '1',
    '-f',
    'rawvideo',
    '-pix_fmt',
    'rgb24',
    '-',
  ]);
  const green = Array.from({ length: side * side }, (_, i) => i).filter((i) => {
    return (rgb[3 * i + 1] as number) - (rgb[3 * i] as number) > 40;
  });
  const mean = (of: (i: number) => number) => green.reduce((sum, i) => sum + of(i), 0) / green.length;
  return Math.hypot(
    left + mean((i) => i % side) + 0.5 - x,
    top + mean((i) => Math.floor(i / side)) + 0.5 - y,
  );
}

it('[ST6901] [ST6900] [ST7200] makes a film in the browser where the computer of the desk has no FFmpeg, sound and picture in their places', async () => {
  const { url } = await startDesk();
  const page = await openWindow(browser, await addressOf(url, 'First swing', 'print'));
  const giveBack = await withoutFfmpeg();
  await page.getByRole('button', { name: 'Make a film' }).click();
  const form = page.locator('[data-part="films"]');
  await form.getByText('some', { exact: true }).click();
  await form.getByRole('spinbutton', { name: 'Tempo' }).fill('240');
  await form.getByText('Begin with the groove, limb by limb').click();
  await form
    .getByText(/ of film, 1920 × 1080, about .* The computer that runs the desk has no FFmpeg/)
    .waitFor();
  await form.getByRole('button', { name: 'Make the film' }).click();
  await form.getByText('The film is there:').waitFor({ timeout: PATIENCE_MS });
  const saving = page.waitForEvent('download');
  await form.getByRole('link', { name: /^Film/ }).click();
  const saved = await saving;
  giveBack();
  const file = await saved.path();
  expect(saved.suggestedFilename()).toBe('first-swing.webm');
  const { streams, chapters } = JSON.parse(
    `${said('ffprobe', ['-count_packets', '-show_streams', '-show_chapters', '-of', 'json', file])}`,
  );
  const film = await filmAsked();
  expect(streams).toMatchObject([
    // standard: ITU-R BT.709-6, limited range
    {
      ...{ codec_name: 'vp9', width: 1920, height: 1080, nb_read_packets: `${film.frames}` },
      ...{ color_range: 'tv', color_space: 'bt709', avg_frame_rate: '30/1' },
    },
    { codec_name: 'opus', sample_rate: '48000', channels: 2 },
  ]);
  // definition: three seconds of title, then the exercise, until the last frame
  expect(
    chapters.map((each: { start_time: string; end_time: string; tags: { title: string } }) => [
      ...[Number(each.start_time), Number(each.end_time), each.tags.title],
    ]),
  ).toEqual([
    [0, 3, 'Title'],
    [3, film.frames / 30, 'Exercise 1, 240 beats a minute'],
  ]);
  // library: FFmpeg decodes what the browser encoded; colour is kept for pairs of pixels
  for (const number of [160, 187, 214, 241]) expect(ballError(file, film, number)).toBeLessThan(2);
  // definition: three seconds of title, one of a page that stands still, then the first click; within 5 ms
  const samples = said('ffmpeg', ['-i', file, '-f', 'f32le', '-ac', '1', '-t', '4.2', '-']);
  const sound = new Float32Array(Uint8Array.from(samples).buffer);
  const first = sound.findIndex((sample) => Math.abs(sample) > 0.02) / 48_000;
  expect(Math.abs(first - 4)).toBeLessThan(0.005);
  await form.getByRole('link', { name: /^Captions, German/ }).waitFor();
});

it('[ST7201] makes the films of a pack in the browser where the computer of the desk has no FFmpeg', async () => {
  const { url } = await startDesk();
  const text =
    'title: Short\ntempo: 240\nexercises: [x x x x]\nforms: {Four: {sections: [{pattern: 4}], repeat: 1}}\n';
  const created = await fetch(new URL('/api/lessons', url), {
    ...{ method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify({ text }) },
  });
  expect(created.status).toBe(201);
  const page = await openWindow(browser, await addressOf(url, 'Short', 'print'));
  const giveBack = await withoutFfmpeg();
  await page.getByText('A film of each exercise').click();
  await page.getByText(/ of film, 1920 × 1080, about .* so this browser makes the film/).waitFor();
  const saving = page.waitForEvent('download', { timeout: PATIENCE_MS });
  await page.getByRole('button', { name: 'Take-home pack (ZIP)' }).click();
  const file = await (await saving).path();
  giveBack();
  const film = unzipSync(await readFile(file))['practice/files/films/01.webm'] ?? new Uint8Array();
  // definition: 3 s of title, 1 s, a bar of a second counted in, four of them, 2 s of ringing; library: FFmpeg reads each frame
  const told = spawnSync('ffmpeg', ['-i', '-', '-f', 'null', '-'], { input: film }).stderr.toString();
  expect(told).toMatch(/frame= *330 /);
});
