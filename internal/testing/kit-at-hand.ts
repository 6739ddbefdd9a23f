/**
 * For browser tests: the kit, made once and kept in the temporary folder. A page makes it anew whenever it is opened,
 * which takes five seconds of the processor; tests whose subject is the sound itself let it.
 */

import { createReadStream } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { basename, join, parse } from 'node:path';
import { Hertz } from '@shedbook/core';
import { SOUND_NAMES, type SoundName } from '@shedbook/sound';
import { KIT_SEED } from '@shedbook/stand';
import type { Browser, BrowserContext, BrowserContextOptions } from 'playwright-core';
import { keptKit } from './kept-kit.mjs';

/** Samples a second of the pages' player, Hz. */
const RATE_HZ = Hertz(44_100);

/** Until sounds that nothing asked for yet are fetched as well, in milliseconds: most pages of tests are gone by then. */
const REST_AFTER_MS = 8000;

/** What takes the place of the worker that makes the kit: it asks for sounds, what is needed first at first. */
const worker = (url: string, sounds: readonly string[]) => `
const revive = (bytes) => (_, value) => value?.samples === undefined || value.at === undefined
  ? value
  : new self[value.samples](bytes.slice(value.at, value.at + value.bytes));
self.onmessage = async ({ data }) => {
  const fetchAll = async (names) => {
    for (const name of names) {
      const [shape, bytes] = await Promise.all([
        fetch('${url}' + name + '.json').then((answer) => answer.text()),
        fetch('${url}' + name + '.bin').then((answer) => answer.arrayBuffer()),
      ]);
      data.port.postMessage({ name, sound: JSON.parse(shape, revive(bytes)) });
    }
  };
  // Two of these run, one for each part of the kit.
  const isOwn = (_, index) => index % 2 === (data.part === 'cymbals' ? 0 : 1);
  const rest = ${JSON.stringify(sounds)}.filter((name) => !data.first.includes(name));
  await fetchAll(data.first.filter(isOwn));
  await new Promise((resolve) => setTimeout(resolve, ${REST_AFTER_MS}));
  await fetchAll(rest.filter(isOwn));
  self.close();
};
`;

/** Serves the kit to pages. @returns the script that fetches it */
async function serveKit(): Promise<string> {
  const kit = keptKit({ sampleRateHz: RATE_HZ, seed: KIT_SEED });
  const server = createServer((request, response) => {
    const name = basename(request.url ?? '');
    kit.sound(parse(name).name as SoundName);
    response.writeHead(200, { 'access-control-allow-origin': '*' });
    createReadStream(join(kit.folder, name)).pipe(response);
  });
  await new Promise<void>((resolve) => {
    server.listen(0, '127.0.0.1', resolve);
  });
  server.unref();
  return worker(`http://127.0.0.1:${(server.address() as AddressInfo).port}/`, SOUND_NAMES);
}

/**
 * What a page of the tests may: ask another port of this machine, where the sounds lie, and what it may without being
 * asked, since whatever is not named here is refused.
 */
const LEAVE = ['local-network-access', 'screen-wake-lock'];

let served: Promise<string> | null = null;

/** Options of a window. */
export interface WindowOptions extends BrowserContextOptions {
  /** Whether the page makes its kit itself, as it does for everybody; otherwise it finds one at hand. */
  readonly ownKit?: boolean;
}

/** A window of its own, in English, with the kit at hand. */
export async function newWindow(browser: Browser, options: WindowOptions = {}): Promise<BrowserContext> {
  const { ownKit = false, ...others } = options;
  const context = await browser.newContext({ locale: 'en', ...others });
  if (ownKit) return context;
  served ??= serveKit();
  const body = await served;
  await context.grantPermissions(LEAVE);
  await context.route(/\/kit\.worker[^/]*\.js$/, (route) =>
    route.fulfill({ body, contentType: 'text/javascript' }),
  );
  return context;
}
