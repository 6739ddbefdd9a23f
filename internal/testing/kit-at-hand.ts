/**
 * For browser tests: the kit, at hand. A page makes it anew whenever it is opened, which takes five seconds of the
 * processor; tests whose subject is the sound itself let it.
 */

import { createReadStream } from 'node:fs';
import { createServer, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { basename, join, parse } from 'node:path';
import { Hertz } from '@shedbook/core';
import { SOUND_NAMES, type SoundName } from '@shedbook/sound';
import { ALL_SOUNDS, KIT_SEED } from '@shedbook/stand';
import type { Browser, BrowserContext, BrowserContextOptions } from 'playwright-core';
import { keptKit, lightKit, written } from './kept-kit.mjs';

const KIT = { sampleRateHz: Hertz(44_100), seed: KIT_SEED };

/** Until sounds that nothing asked for yet are fetched as well, in milliseconds: most pages of tests are gone by then. */
const REST_AFTER_MS = 8000;

/** In a worker that fetches sounds: gives samples their place in a shape back, and fetches both. */
const READING = (url: string) => `
const revive = (bytes) => (_, value) => value?.samples === undefined || value.at === undefined
  ? value
  : new self[value.samples](bytes.slice(value.at, value.at + value.bytes));
const read = async (name) => {
  const [shape, bytes] = await Promise.all([
    fetch('${url}' + name + '.json').then((answer) => answer.text()),
    fetch('${url}' + name + '.bin').then((answer) => answer.arrayBuffer()),
  ]);
  return JSON.parse(shape, revive(bytes));
};
`;

/** What takes the place of the two workers that make the kit: they ask for sounds, what is needed first at first. */
const wholeKit = (url: string) => `${READING(url)}
self.onmessage = async ({ data }) => {
  const fetchAll = async (names) => {
    for (const name of names) data.port.postMessage({ name, sound: await read(name) });
  };
  const isOwn = (_, index) => index % 2 === (data.part === 'cymbals' ? 0 : 1);
  const rest = ${JSON.stringify(SOUND_NAMES)}.filter((name) => !data.first.includes(name));
  await fetchAll(data.first.filter(isOwn));
  await new Promise((resolve) => setTimeout(resolve, ${REST_AFTER_MS}));
  await fetchAll(rest.filter(isOwn));
  data.port.onmessage = () => self.close();
  data.port.postMessage('${ALL_SOUNDS}');
};
`;

/** The same for a light kit: one of the two gets all of it at once. */
const lightOne = (url: string) => `${READING(url)}
self.onmessage = async ({ data }) => {
  const sounds = data.part === 'cymbals' ? await read('light') : [];
  for (const sound of sounds) data.port.postMessage(sound);
  data.port.onmessage = () => self.close();
  data.port.postMessage('${ALL_SOUNDS}');
};
`;

/** A light kit as files that lie beside a page, and the worker that fetches them from there. */
export function lightKitFiles(): {
  readonly worker: string;
  readonly shape: string;
  readonly bytes: Uint8Array;
} {
  const { sound } = lightKit(KIT);
  const { shape, bytes } = written(SOUND_NAMES.map((name) => ({ name, sound: sound(name) })));
  return { worker: lightOne('../'), shape, bytes };
}

/** Sends a file of a sound of the whole kit, or of the light one. */
function send(file: string, light: ReturnType<typeof written>, response: ServerResponse): void {
  const kit = keptKit(KIT);
  response.writeHead(200, { 'access-control-allow-origin': '*' });
  if (file === 'light.json') response.end(light.shape);
  else if (file === 'light.bin') response.end(light.bytes);
  else {
    kit.sound(parse(file).name as SoundName);
    createReadStream(join(kit.folder, file)).pipe(response);
  }
}

/** Serves kits to pages. @returns the scripts that fetch them */
async function serveKits(): Promise<Readonly<Record<'light' | 'whole', string>>> {
  const { sound } = lightKit(KIT);
  const light = written(SOUND_NAMES.map((name) => ({ name, sound: sound(name) })));
  const server = createServer((request, response) => send(basename(request.url ?? ''), light, response));
  await new Promise<void>((resolve) => {
    server.listen(0, '127.0.0.1', resolve);
  });
  server.unref();
  const url = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
  return { light: lightOne(url), whole: wholeKit(url) };
}

/**
 * What a page of the tests may: ask another port of this machine, where the sounds lie, and what it may without being
 * asked, since whatever is not named here is refused.
 */
const LEAVE = ['local-network-access', 'screen-wake-lock'];

let served: ReturnType<typeof serveKits> | null = null;

/** Options of a window. */
export interface WindowOptions extends BrowserContextOptions {
  /**
   * What the page sounds with: its `own` kit, which it makes itself as it does for everybody; that kit `whole`, at hand;
   * or `light`, unless told, where nobody hears how it sounds.
   */
  readonly kit?: 'own' | 'whole' | 'light';
}

/** A window of its own, in English, with a kit at hand. */
export async function newWindow(browser: Browser, options: WindowOptions = {}): Promise<BrowserContext> {
  const { kit = 'light', ...others } = options;
  const context = await browser.newContext({ locale: 'en', ...others });
  if (kit === 'own') return context;
  served ??= serveKits();
  const body = (await served)[kit];
  await context.grantPermissions(LEAVE);
  await context.route(/\/kit\.worker[^/]*\.js$/, (route) =>
    // A service worker keeps what the host has, and nothing else.
    route.request().serviceWorker()
      ? route.continue()
      : route.fulfill({ body, contentType: 'text/javascript' }),
  );
  return context;
}
