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
    const { AudioContext: Real } = window;
    let isGiven = false;
    window.AudioContext = class extends Real {
      constructor(options?: AudioContextOptions) {
        super(options);
        if (!isGiven) void this.suspend();
      }
      override resume = () =>
        isGiven ? Real.prototype.resume.call(this) : new Promise<void>(() => undefined);
    };
    Object.assign(window, {
      giveOutput: () => {
        isGiven = true;
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

/** Orders that the sound thread got, and the page's audio contexts. */
interface Watched {
  readonly orders: string[];
  readonly contexts: AudioContext[];
  giveOutput: () => void;
}

const watched = <T>(page: Page, read: (of: Watched) => T) =>
  page.evaluate(`(${read})(window.watched)`) as Promise<T>;

/** An exercise at rest, watched; `session` is what such a device as a phone has. */
async function atRest(session: object | null): Promise<Page> {
  const page = await openWithDevices(browser, 'about:blank');
  await page.addInitScript((audioSession) => {
    const of: Watched = { orders: [], contexts: [], giveOutput: () => undefined };
    Object.assign(window, { watched: of });
    if (audioSession) Object.assign(navigator, { audioSession });
    const { postMessage } = MessagePort.prototype;
    MessagePort.prototype.postMessage = function (this: MessagePort, ...sent: [never]) {
      of.orders.push((sent[0] as { kind?: string } | null)?.kind ?? '');
      postMessage.apply(this, sent);
    } as typeof postMessage;
    const { AudioContext: Real } = window;
    window.AudioContext = class extends Real {
      constructor(options?: AudioContextOptions) {
        super(options);
        of.contexts.push(this);
      }
    };
  }, session);
  await page.goto(`${host.url}#1`);
  await expect.poll(() => watched(page, ({ orders }) => orders.includes('rehearse'))).toBe(true);
  return page;
}

it('[ST3701] rehearses at rest and lets the loudspeaker run, but not where that takes the place of the device’s own sound', async () => {
  const states = (page: Page) => watched(page, ({ contexts }) => contexts.map(({ state }) => state).join());
  const plain = await atRest(null);
  await expect.poll(() => states(plain)).toBe('running');
  const page = await atRest({ type: 'auto' });
  expect(await states(page)).toBe('suspended');
  // The press on another button is none on Play.
  await page.getByRole('button', { name: 'Faster', exact: true }).click();
  expect(await states(page)).toBe('suspended');
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await sounds(page);
});

it('[ST3701] orders what is to be played while the loudspeaker is still on its way', async () => {
  const page = await atRest({ type: 'auto' });
  await page.evaluate(() => {
    const of = (window as unknown as { watched: Watched }).watched;
    const { resume } = AudioContext.prototype;
    AudioContext.prototype.resume = function (this: AudioContext) {
      return new Promise<void>((resolve) => {
        of.giveOutput = () => void resume.call(this).then(resolve);
      });
    };
  });
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await expect.poll(() => watched(page, ({ orders }) => orders.includes('start'))).toBe(true);
  await watched(page, (of) => of.giveOutput());
  await sounds(page);
});
