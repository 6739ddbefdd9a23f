/**
 * For browser tests: the kit, made once and kept in the temporary folder. A page makes it anew whenever it is opened,
 * which takes five seconds of the processor; tests whose subject is the sound itself let it.
 */

import { createHash } from 'node:crypto';
import {
  createReadStream,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Hertz } from '@shedbook/core';
import type { Browser, BrowserContext, BrowserContextOptions } from 'playwright-core';

/** Samples a second of the pages' player, Hz. */
const RATE_HZ = Hertz(44_100);

/** Rooms that the kit is made of. */
const SOURCES = ['core', 'signal', 'sound'].map((room) =>
  fileURLToPath(new URL(`../../packages/${room}/src`, import.meta.url)),
);

/** The folder of the kit that these sources make. */
function folderOfKit(): string {
  const hash = createHash('sha256');
  for (const folder of SOURCES) {
    const names = readdirSync(folder, { recursive: true }) as string[];
    for (const name of names.filter((each) => each.endsWith('.ts')).toSorted()) {
      hash.update(readFileSync(join(folder, name)));
    }
  }
  return join(tmpdir(), `shedbook-kit-${hash.digest('hex').slice(0, 16)}`);
}

/** A sound as JSON, and its samples one after the other. */
function written(sound: unknown): { readonly shape: string; readonly bytes: Buffer } {
  const parts: Uint8Array[] = [];
  let at = 0;
  const shape = JSON.stringify(sound, (_, value: unknown) => {
    if (!(value instanceof Float32Array || value instanceof Float64Array)) return value;
    parts.push(new Uint8Array(value.buffer, value.byteOffset, value.byteLength));
    const place = { samples: value.constructor.name, at, bytes: value.byteLength };
    at += value.byteLength;
    return place;
  });
  return { shape, bytes: Buffer.concat(parts) };
}

/** Makes the kit unless it is there, whole or not at all. @returns its folder */
async function kitFolder(): Promise<string> {
  const folder = folderOfKit();
  if (existsSync(folder)) return folder;
  const { createKit, SOUND_NAMES } = await import('@shedbook/sound');
  const { KIT_SEED } = await import('@shedbook/stand');
  const half = mkdtempSync(`${folder}-`);
  const kit = createKit({ sampleRateHz: RATE_HZ, seed: KIT_SEED });
  for (const name of SOUND_NAMES) {
    const { shape, bytes } = written(kit.sound(name));
    writeFileSync(join(half, `${name}.json`), shape);
    writeFileSync(join(half, `${name}.bin`), bytes);
  }
  try {
    renameSync(half, folder);
  } catch {
    // Another process was first.
    rmSync(half, { recursive: true });
  }
  return folder;
}

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
  const folder = await kitFolder();
  const sounds = readdirSync(folder).flatMap((name) => (name.endsWith('.bin') ? [name.slice(0, -4)] : []));
  const server = createServer((request, response) => {
    const name = (request.url ?? '').slice(1);
    response.writeHead(200, { 'access-control-allow-origin': '*' });
    createReadStream(join(folder, name)).pipe(response);
  });
  await new Promise<void>((resolve) => {
    server.listen(0, '127.0.0.1', resolve);
  });
  server.unref();
  return worker(`http://127.0.0.1:${(server.address() as AddressInfo).port}/`, sounds);
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
