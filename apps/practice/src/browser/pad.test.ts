import { Bpm, ontoPad, perform } from '@shedbook/core';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { findings } from '../../../../internal/testing/axe.ts';
import { sharedBrowser } from '../../../../internal/testing/browser.ts';
import {
  formOnce,
  HEARING_LESSON,
  hostHearingPack,
  LEAD_SECONDS,
  lessonOf,
  openWithDevices,
  willPlay,
} from '../../../../internal/testing/hearing.ts';
import { strokesOf } from '../../../../internal/testing/sound.ts';

const whole = lessonOf(HEARING_LESSON);
const { lesson: pad, form } = ontoPad({ lesson: whole, exercise: 1, form: formOnce(whole) });
const BPM = 160;
const LOOP_SECONDS = 3;
const RATE = 44_100;

const browser = await sharedBrowser();
const host = await hostHearingPack();

/** When exercise 1 is struck in some rounds, in seconds from the first bar line. */
function times(rounds: number): readonly number[] {
  const { strokes } = perform(pad, { exercise: 1, form, bpm: Bpm(BPM) });
  const once = strokes.filter(({ voice }) => voice === 'snare').map(({ timeSeconds }) => timeSeconds + 0.004);
  return Array.from({ length: rounds }, (_, round) => once.map((time) => time + round * LOOP_SECONDS)).flat();
}

async function onPad(page: Page): Promise<void> {
  await page.getByText('Pad or table').click();
  await page.getByText('Any short tap counts').waitFor();
}

const play = (page: Page) => page.getByRole('button', { name: 'Play', exact: true }).click();

/** What was said of the first rounds. */
async function rounds(page: Page, count: number): Promise<readonly string[]> {
  const all = page.locator('[data-part="rounds"] li');
  await expect.poll(() => all.count()).toBeGreaterThanOrEqual(count);
  return (await all.allTextContents()).slice(0, count);
}

it('[ST149] takes any key of a MIDI pad for the exercise, and falls silent for it', async () => {
  const page = await openWithDevices(browser, `${host.url}#1`);
  await onPad(page);
  await page.getByRole('button', { name: 'Use a MIDI pad: any key' }).click();
  await page.locator('[data-ear="on"]').waitFor();
  // standard: General MIDI, keys that are no drum of the exercise; one bar of four is counted in at 160
  const notes = times(2).map((seconds, i) => ({ seconds: 1.5 + seconds, data: [0x90, 60 + (i % 5), 90] }));
  await page.evaluate((all) => {
    window.deskOfTest.plans.push((countIn) =>
      window.deskOfTest.send(all.map((note) => ({ ...note, seconds: note.seconds + countIn }))),
    );
  }, notes);
  await page.evaluate(() => {
    Object.assign(window, { heardByTest: { strokes: [] } });
    window.addEventListener('shedbook:strokes', (event) => {
      window.heardByTest.strokes.push(...(event as CustomEvent).detail.strokes);
    });
  });
  await play(page);
  expect(await rounds(page, 2)).toEqual(['Round 1 at 160: clean', 'Round 2 at 160: clean']);
  const sounding = new Set((await strokesOf(page)).map(({ stroke }) => stroke.voice));
  expect([sounding.has('snare'), sounding.has('ride')]).toEqual([false, true]);
});

it('[ST149] [ST150] sets up for a table, then hears taps of the rhythm as clean', async () => {
  const page = await openWithDevices(browser, `${host.url}#1`, { loopback: true, delaySeconds: 0.03 });
  await onPad(page);
  await page.getByRole('button', { name: 'Use the microphone' }).click();
  const setUp = page.locator('[data-part="pad-set-up"]');
  await setUp.waitFor();
  expect(await findings(page)).toEqual([]);
  expect(await setUp.textContent()).toContain('a hand away from where you tap');
  await page.getByRole('button', { name: 'It lies there' }).click();
  await setUp.getByText('0 of 4 heard well').waitFor();
  await page.getByRole('button', { name: 'Go on without' }).click();
  await page.getByRole('button', { name: 'Play the clicks' }).click();
  // What was checked is known from then on, and the set-up is over.
  await setUp.waitFor({ state: 'detached' });
  await page.evaluate(() => window.deskOfTest.loopback?.gain.setValueAtTime(0, 0));
  const samples = new Float32Array(Math.ceil((LEAD_SECONDS + 2 * LOOP_SECONDS + 0.5) * RATE));
  for (const time of times(2)) {
    const from = Math.round((LEAD_SECONDS + time) * RATE);
    for (let i = 0; i < 0.05 * RATE; i += 1) {
      samples[from + i] = 0.4 * Math.sin((2 * Math.PI * 900 * i) / RATE) * Math.exp(-i / (0.01 * RATE));
    }
  }
  await willPlay(page, samples, BPM);
  await play(page);
  expect(await rounds(page, 2)).toEqual(['Round 1 at 160: clean', 'Round 2 at 160: clean']);
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  await page.goto(`${host.url}#`);
  await page.getByRole('heading', { name: 'Over the weeks' }).click();
  // [ST151] two clean rounds are a tempo that held, and the left hand played them
  await page.getByRole('img', { name: /^Tempo that held: Exercise 1: 160 bpm in the week of/ }).waitFor();
  await page.getByRole('img', { name: /^How even: left hand: \d+ ms apart/ }).waitFor();
  expect(await findings(page), 'progress').toEqual([]);
});
