import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { sharedBrowser } from '../../../../internal/testing/browser.ts';
import { hostHearingPack, openWithDevices } from '../../../../internal/testing/hearing.ts';

const browser = await sharedBrowser();
const host = await hostHearingPack();

/** An exercise on a platform that lacks something from the start. */
async function onStand(lack: () => void): Promise<Page> {
  const page = await openWithDevices(browser, 'about:blank');
  await page.addInitScript(lack);
  await page.goto(`${host.url}#1`);
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  return page;
}

const note = (page: Page) => page.locator('[data-part="ledge"] [role="status"]');

/** The exercise is heard, bar by bar: strokes are given out, and the count follows what leaves the loudspeaker. */
async function sounds(page: Page): Promise<void> {
  await page.locator('[data-part="counter"][data-kind="pattern"]').waitFor();
  await page
    .getByText(/bar 2 of 2/)
    .first()
    .waitFor();
}

it('[ST241] says that the device gave no output, and sounds when Play is pressed again', async () => {
  const page = await onStand(() => {
    // standard: Web Audio API: what resume() gives stays pending while the context is not allowed to start
    const { resume } = AudioContext.prototype;
    AudioContext.prototype.resume = () => new Promise(() => undefined);
    Object.assign(window, {
      giveOutput: () => {
        AudioContext.prototype.resume = resume;
      },
    });
  });
  await expect.poll(() => note(page).textContent()).toMatch(/^No sound came out of this device/);
  await page.evaluate(() => (window as unknown as { giveOutput: () => void }).giveOutput());
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await sounds(page);
});

it.each([
  ['never comes', () => Object.assign(AudioWorklet.prototype, { addModule: () => new Promise(() => {}) })],
  [
    'is refused',
    () => Object.assign(AudioWorklet.prototype, { addModule: () => Promise.reject(new Error()) }),
  ],
])('[ST2702] plays through plain buffers where the sound thread %s, and says so', async (_, lack) => {
  const page = await onStand(lack);
  await sounds(page);
  expect(await note(page).textContent()).toMatch(/^You hear a simpler sound/);
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  await expect.poll(() => note(page).textContent()).toBe('');
});

it('[ST2702] plays a small kit where the kit is not there in time, and says so', async () => {
  const page = await onStand(() => {
    const { Worker: Real } = window;
    window.Worker = class extends Real {
      override postMessage(...sent: [unknown]) {
        const isKit = typeof sent[0] === 'object' && sent[0] !== null && 'part' in sent[0];
        if (!isKit) super.postMessage(...sent);
      }
    } as typeof Worker;
  });
  await sounds(page);
  expect(await note(page).textContent()).toMatch(/^The kit takes long to set up here/);
});

it('[ST2702] leaves the room out where all is there and no stroke comes', async () => {
  const page = await onStand(() => {
    const { postMessage } = MessagePort.prototype;
    // A thread that is too busy for a room, from the page's side.
    MessagePort.prototype.postMessage = function (this: MessagePort, ...sent: [never]) {
      const order = sent[0] as { kind?: string; room?: boolean };
      if (order?.kind === 'start' && order.room) return;
      postMessage.apply(this, sent);
    } as typeof postMessage;
  });
  await sounds(page);
  expect(await note(page).textContent()).toMatch(/without the room around them/);
});
