import { Hertz } from '@shedbook/core';
import { demonstrate } from '@shedbook/playing';
import { encodeMonoFlac } from '@shedbook/sound';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { sharedBrowser } from '../../../../internal/testing/browser.ts';
import { makeHearingPack, openWithDevices } from '../../../../internal/testing/hearing.ts';
import { asked, playNotes, reportOfNotes, SWING_TEXT } from '../../../../internal/testing/played-notes.ts';
import { hostFolder, type StaticHost, temporaryFolder } from '../../../../internal/testing/practice.ts';

const RATE_HZ = 44_100;
const CLICK_SAMPLES = 200;
/** What is heard begins so late in the take. */
const FROM = 1;
const notes = playNotes(1, 100);
const seconds = (notes.at(-1)?.timeSeconds ?? 0) - FROM + 1;

/** A click at every stroke of the snare: where they lie in what is played is where the strokes are. */
function clicks(): Int16Array<ArrayBuffer> {
  const samples = new Int16Array(Math.round(seconds * RATE_HZ));
  for (const { voice, timeSeconds } of notes) {
    const at = Math.round((timeSeconds - FROM) * RATE_HZ);
    if (voice === 'snare')
      for (let i = 0; i < CLICK_SAMPLES; i += 1) samples[at + i] = 20_000 * (1 - i / CLICK_SAMPLES);
  }
  return samples;
}

const browser = await sharedBrowser();
const folder = temporaryFolder();
let host: StaticHost;

beforeAll(async () => {
  const heard = { exercise: 1, form: asked.form, report: reportOfNotes(notes) };
  const sounding = { fromSeconds: FROM, toSeconds: FROM + seconds };
  const flac = await encodeMonoFlac(clicks(), Hertz(RATE_HZ));
  const also = {
    demonstrations: [{ ...demonstrate(asked.lesson, heard, sounding), flac }],
    films: [{ exercise: 2, ending: '.webm', content: new Uint8Array(8) }],
  };
  host = await hostFolder(await makeHearingPack(SWING_TEXT, folder.path, 'shown', also));
});

afterAll(async () => {
  await host.stop();
  folder.remove();
});

declare global {
  interface Window {
    /** When each click of what was given to the loudspeaker last lies in it, in seconds. */
    clicksGiven: number[];
  }
}

/** Runs in the page: writes down where the clicks of what is played lie. */
function listenIn(): void {
  const start = AudioBufferSourceNode.prototype.start;
  AudioBufferSourceNode.prototype.start = function (...when: number[]) {
    const samples = this.buffer?.getChannelData(0) ?? new Float32Array(0);
    const rate = this.buffer?.sampleRate ?? 1;
    let quiet = Number.POSITIVE_INFINITY;
    window.clicksGiven = [];
    for (let i = 0; i < samples.length; i += 1) {
      const isLoud = Math.abs(samples[i] ?? 0) > 0.4;
      if (isLoud && quiet > 0.03 * rate) window.clicksGiven.push(i / rate);
      quiet = isLoud ? 0 : quiet + 1;
    }
    start.apply(this, when as []);
  };
}

it('[ST3600] the teacher is heard at one press, as played and half as fast, while ball and counter go along; a press of play ends it', async () => {
  const page = await openWithDevices(browser, 'about:blank', {}, { viewport: { width: 390, height: 844 } });
  await page.addInitScript(listenIn);
  await page.goto(`${host.url}#1`);
  const panel = page.locator('[data-part="demonstration"]');
  const button = panel.getByRole('button');
  const struck = notes.filter(({ voice }) => voice === 'snare').map(({ timeSeconds }) => timeSeconds - FROM);
  for (const [percent, slower] of [
    [100, 1],
    [50, 2],
  ] as const) {
    await panel.getByText(`${percent} %`).click();
    await button.click();
    await panel.locator('[data-state="playing"]').waitFor();
    const given = await page.evaluate(() => window.clicksGiven);
    // definition: half as fast is twice as long from stroke to stroke; what the ear tells apart is 2 ms at least
    expect(given).toHaveLength(struck.length);
    for (const [index, time] of struck.entries())
      expect(Math.abs((given[index] ?? 0) - slower * time)).toBeLessThan(0.002);
    await page.locator('[data-part="counter"] [data-part="says"]').getByText('bar 2 of 8').waitFor();
    const ball = page.locator('[data-on="exercise"] [data-part="ball"]');
    expect(await ball.evaluate((element) => getComputedStyle(element).visibility)).toBe('visible');
    await button.click();
    await panel.locator('[data-state="still"]').waitFor();
    expect(await ball.evaluate((element) => getComputedStyle(element).visibility)).toBe('hidden');
  }
  await button.click();
  await panel.locator('[data-state="playing"]').waitFor();
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await panel.locator('[data-state="still"]').waitFor();
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  // An exercise that has a film alone, and one that has nothing.
  await page.goto(`${host.url}#2`);
  await page.locator('[data-part="film"]').getByText('Watch it as a film').waitFor();
  expect(await panel.count()).toBe(0);
  await page.goto(`${host.url}#3`);
  await page.locator('[data-part="form"]').waitFor();
  expect(await page.locator('[data-part="demonstration"], [data-part="film"]').count()).toBe(0);
});
