/** For browser tests of the practice room: packs made by the command line, on a plain static server. */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  cpSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { extname, join, normalize } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { changedAt, ROOT } from '../../scripts/run.mjs';
import { COMMAND } from './command.ts';
import { makeOnce } from './made-once.mjs';

/** A short lesson with every kind of form, quick enough that tests need not wait long for its rounds. */
export const PRACTICE_LESSON = `title: First swing
by: Oda Lindqvist-Reyes
tempo: {start: 280, goal: 296, step: 8}
feel: triplet
groove:
  ride: x x.x x x.x
  hihat-foot: . x . x
  bass: {pattern: x x x x, level: feathered}
forms:
  four and two:
    sections:
      - pattern: 4
        ending: rimshot + crash
      - time: 2
exercises:
  - x.. ..x x.x ...
  - {pattern: ..x ..x x.. x.., name: Gaps, sticking: L L L L, notes: Keep the ride even.}
  - x.. x.. ... ..x | ... ..x ..x x..
`;

/** What the command is made of, as it was compiled last. */
const COMPILED = [
  'bin',
  ...['packages', 'apps'].flatMap((part) =>
    readdirSync(join(ROOT, part)).map((room) => join(part, room, 'dist')),
  ),
];

/** Lets the command make the pack of a lesson. @returns the folder with everything that it wrote */
function build(text: string, name: string): string {
  const out = mkdtempSync(join(tmpdir(), 'shedbook-pack-'));
  const lesson = join(out, `${name}.lesson.yaml`);
  writeFileSync(lesson, text);
  const { status, stderr } = spawnSync(process.execPath, [COMMAND, 'build', lesson, '--out', out, '--pack'], {
    encoding: 'utf8',
  });
  if (status !== 0) throw new Error(`shedbook build --pack ended with ${status}: ${stderr}`);
  return out;
}

/** How long a pack takes at most, in milliseconds. */
const BUILT_MS = 240_000;

/** The same, made once for all files of tests: half of it is a kit and the recordings played on it. */
function keptBuild(text: string, name: string): string {
  const compiled = COMPILED.map((folder) => join(ROOT, folder))
    .filter(existsSync)
    .map(changedAt);
  const made = createHash('sha1')
    .update(JSON.stringify([text, name, ROOT, compiled]))
    .digest('hex');
  const folder = join(tmpdir(), `shedbook-pack-${made}`);
  makeOnce(folder, () => renameSync(build(text, name), folder), BUILT_MS);
  return folder;
}

/** Makes the pack of a lesson into a folder. @returns the pack's own folder */
export function buildPack(text: string, out: string, name = 'first-swing'): string {
  const pack = join(out, 'practice');
  cpSync(join(keptBuild(text, name), 'practice'), pack, { recursive: true });
  return pack;
}

/** A folder that is gone after the tests. */
export function temporaryFolder(): { readonly path: string; readonly remove: () => void } {
  const path = mkdtempSync(join(tmpdir(), 'shedbook-practice-'));
  return { path, remove: () => rmSync(path, { recursive: true, force: true }) };
}

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.webmanifest': 'application/manifest+json',
  '.woff2': 'font/woff2',
  '.pdf': 'application/pdf',
  '.mp3': 'audio/mpeg',
};

/** A plain web host. */
export interface StaticHost {
  readonly url: string;
  /** Serves another folder at the same address. */
  readonly show: (folder: string) => void;
  /** Bytes of every file as they go over the wire, compressed as hosts do. */
  readonly sent: ReadonlyMap<string, number>;
  readonly stop: () => Promise<void>;
}

/** Compressed by a host; the rest is packed already. */
const COMPRESSED = new Set(['.html', '.js', '.css', '.json', '.svg', '.webmanifest']);

/** What was compressed before, by what it was: every pack has the same page. */
const compressed = new Map<string, Buffer>();

function compress(content: Buffer): Buffer {
  const key = createHash('sha1').update(content).digest('hex');
  const body = compressed.get(key) ?? gzipSync(content);
  compressed.set(key, body);
  return body;
}

/** Serves a folder, and nothing else, under a path of its own. */
export async function hostFolder(first: string): Promise<StaticHost> {
  let folder = first;
  const sent = new Map<string, number>();
  const server = createServer((request, response) => {
    const path = decodeURIComponent(new URL(request.url ?? '/', 'http://host').pathname);
    const inside = normalize(path.replace(/^\/first-swing\//, '')).replace(/^\/$/, '');
    const file = join(folder, inside === '' || inside === '.' ? 'index.html' : inside);
    if (!path.startsWith('/first-swing/') || !existsSync(file) || !statSync(file).isFile()) {
      response.writeHead(404).end();
      return;
    }
    const content = readFileSync(file);
    const packs = COMPRESSED.has(extname(file));
    const body = packs ? compress(content) : content;
    sent.set(inside, body.length);
    response.writeHead(200, {
      'content-type': TYPES[extname(file)] ?? 'application/octet-stream',
      'content-length': body.length,
      ...(packs ? { 'content-encoding': 'gzip' } : {}),
    });
    response.end(body);
  });
  await new Promise<void>((resolve) => {
    server.listen(0, '127.0.0.1', resolve);
  });
  const { port } = server.address() as AddressInfo;
  return {
    url: `http://127.0.0.1:${port}/first-swing/`,
    show: (next) => {
      folder = next;
    },
    sent,
    stop: () =>
      new Promise((resolve) => {
        server.closeAllConnections();
        server.close(() => resolve());
      }),
  };
}

/**
 * Presses again and again until the ladder says where one stands: a press counts once for a round that has gone by, and
 * before that for nothing.
 */
export async function pressUntilLadderSays(
  page: Page,
  press: () => Promise<void>,
  text: string,
): Promise<void> {
  const reads = async () => {
    await press();
    return page.locator('[data-part="ladder-says"]').textContent();
  };
  await expect.poll(reads, { timeout: 60_000, interval: 200 }).toContain(text);
}

/** Lets what plays go on for longer than the log takes for practice, by the clock of the page. */
export async function playOnForLog(page: Page): Promise<void> {
  const from = await page.evaluate(() => performance.now());
  await page.waitForFunction((least) => performance.now() > least, from + 5600, { polling: 200 });
}
