/** For browser tests: the built desk on a real server with a store of its own, in a real Chromium. */
import { once } from 'node:events';
import { cpSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import { type AddressInfo, createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Lesson, parseLesson } from '@shedbook/core';
import { pathOf, type View } from '@shedbook/desk/address';
import type { StoredLesson } from '@shedbook/routes';
import {
  inviteTeacher,
  type RunningServer,
  type StartOptions,
  setPassphrase,
  startServer,
} from '@shedbook/server';
import { type Browser, chromium, type Page, type Request } from 'playwright-core';
import { expect, onTestFailed, onTestFinished } from 'vitest';
import { newWindow, type WindowOptions } from './kit-at-hand.ts';
import { sharedMakers } from './makers.ts';
import { chromiumPath } from './programs.mjs';

/** The folder of the built desk; `SHEDBOOK_SITE` names another one. */
export const SITE =
  process.env['SHEDBOOK_SITE'] ?? fileURLToPath(new URL('../../apps/desk/dist/site', import.meta.url));

/** The folder of the demo lessons. */
export const DEMO = fileURLToPath(new URL('../../demo', import.meta.url));

/** How long a test waits for a page; a busy machine takes many times as long as a quiet one. */
export const PATIENCE_MS = 60_000;

/** Chromium as root, without a screen, asking nothing of the network. */
const ARGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--autoplay-policy=no-user-gesture-required',
];

/** Starts Chromium. @throws Error when there is none or the desk is not built. */
async function launch(): Promise<Browser> {
  if (!existsSync(join(SITE, 'index.html'))) throw new Error('The desk is not built: npm run build');
  return chromium.launch({ executablePath: await chromiumPath(), args: ARGS });
}

let running: Promise<Browser> | null = null;

/** Chromium for all test files of this process; each test opens windows of its own. It ends with the process. */
export async function sharedBrowser(): Promise<Browser> {
  const before = await running;
  if (before?.isConnected()) return before;
  running = launch();
  return running;
}

/** A server with a store in a folder of its own, both gone when the test ends. */
async function serverIn(dataDir: string, more: Partial<StartOptions>): Promise<RunningServer> {
  const server = await startServer({ port: 0, dataDir, staticDir: SITE, makers: sharedMakers, ...more });
  onTestFinished(async () => {
    await server.close();
    rmSync(dataDir, { recursive: true, force: true });
  });
  return server;
}

const newFolder = () => mkdtempSync(join(tmpdir(), 'shedbook-desk-'));

/** A folder in which a desk has given its demo lessons already; it goes with the process. */
async function seedFolder(): Promise<string> {
  const dataDir = newFolder();
  process.once('exit', () => rmSync(dataDir, { recursive: true, force: true }));
  const server = await startServer({ port: 0, dataDir, staticDir: SITE, seedLessonsDir: DEMO });
  await server.close();
  return dataDir;
}

let seeded: Promise<string> | null = null;

/** That folder, made once a process. */
function seededFolder(): Promise<string> {
  seeded ??= seedFolder();
  return seeded;
}

/** A server with the demo lessons, closed when the test ends: reading and summing them up is done once a process. */
export async function startDesk(): Promise<RunningServer> {
  const dataDir = newFolder();
  cpSync(await seededFolder(), dataDir, { recursive: true });
  return serverIn(dataDir, { seedLessonsDir: DEMO });
}

/**
 * An empty desk that others reach, which asks who comes; closed when the test ends.
 * @param address as others call it
 * @returns the address at which it answers here
 */
export async function startGuardedDesk(passphrase: string, address: string): Promise<string> {
  const dataDir = newFolder();
  await setPassphrase(passphrase, dataDir);
  return (await serverIn(dataDir, { address })).url;
}

/** A port that nobody listens on just now. */
async function freePort(): Promise<number> {
  const server = createServer().listen(0);
  await once(server, 'listening');
  const { port } = server.address() as AddressInfo;
  server.close();
  await once(server, 'close');
  return port;
}

/**
 * An empty desk at an address that a browser takes for safe, with other teachers let in; closed when the test ends.
 * @returns its address, and what opens the letter of each
 */
export async function startSchool(
  passphrase: string,
  names: readonly string[],
): Promise<{ readonly url: string; readonly letters: readonly string[] }> {
  const dataDir = newFolder();
  await setPassphrase(passphrase, dataDir);
  const port = await freePort();
  const address = `http://localhost:${port}`;
  const letters: string[] = [];
  for (const name of names) letters.push(await inviteTeacher(name, { address, dataDir }));
  await serverIn(dataDir, { port, address });
  return { url: `${address}/`, letters };
}

/** A window of its own, closed when the test ends. */
export async function openWindow(browser: Browser, url: string, options: WindowOptions = {}): Promise<Page> {
  const context = await newWindow(browser, options);
  onTestFinished(() => context.close());
  const page = await context.newPage();
  page.setDefaultTimeout(PATIENCE_MS);
  await page.goto(url);
  return page;
}

/** Milliseconds without a question to the server after which a page has all that it asks for by itself. */
const QUIET_MS = 500;

/** Waits until a page that does something has asked for nothing for a while; what it listens to all the time is no question. */
async function untilQuiet(page: Page, doing: () => Promise<void>): Promise<void> {
  const asked = new Set<Request>();
  let last = performance.now();
  const onAsked = (request: Request) => {
    if (!request.url().endsWith('/api/changes')) asked.add(request);
  };
  const onAnswered = (request: Request) => {
    if (asked.delete(request)) last = performance.now();
  };
  page.on('request', onAsked).on('requestfinished', onAnswered).on('requestfailed', onAnswered);
  try {
    await doing();
    await expect.poll(() => asked.size === 0 && performance.now() - last > QUIET_MS).toBe(true);
  } finally {
    page.off('request', onAsked).off('requestfinished', onAnswered).off('requestfailed', onAnswered);
  }
}

/** Turns to another view of the lesson that is open, by its tab, and waits until it is there: no page is loaded anew. */
export async function turnTo(page: Page, view: Exclude<View, 'page'>): Promise<void> {
  await untilQuiet(page, async () => {
    await page.locator(`[data-part="index-tabs"] a[href$="/${view}"]`).click();
    const content = view === 'room' ? '[data-part="room"] button' : 'main :is(button, input, textarea)';
    await page.locator(`[data-view="${view}"] ${content}`).first().waitFor();
  });
}

async function lessonsOf(desk: string): Promise<readonly StoredLesson[]> {
  return (await fetch(new URL('/api/lessons', desk))).json() as Promise<readonly StoredLesson[]>;
}

/** The address of a view of a lesson that a desk has, by the lesson's title. */
export async function addressOf(desk: string, title: string, view: View): Promise<string> {
  const found = (await lessonsOf(desk)).find(({ text }) => text.includes(`title: ${title}\n`));
  if (!found) throw new Error(`no lesson is called ${title}`);
  return new URL(pathOf({ at: 'lesson', id: found.id, view }), desk).href;
}

/** A lesson of the demo in one of its views, on a desk of its own. */
export async function openView(
  browser: Browser,
  title: string,
  view: View,
  options: WindowOptions = { viewport: { width: 1440, height: 900 } },
): Promise<Page> {
  const { url } = await startDesk();
  const page = await openWindow(browser, await addressOf(url, title, view), options);
  await page.locator('main, [data-part="room"]').first().waitFor();
  await settled(page);
  return page;
}

/** What tests share: a desk that runs, and a window on it. */
interface SharedDesk {
  readonly url: string;
  readonly page: Page;
  /** The lessons of the demo, as they came with it. */
  readonly demo: readonly string[];
  readonly close: () => Promise<void>;
}

async function openShared(browser: Browser): Promise<SharedDesk> {
  const dataDir = newFolder();
  const remove = () => rmSync(dataDir, { recursive: true, force: true });
  process.once('exit', remove);
  cpSync(await seededFolder(), dataDir, { recursive: true });
  const server = await startServer({ port: 0, dataDir, staticDir: SITE, makers: sharedMakers });
  const context = await newWindow(browser);
  const page = await context.newPage();
  page.setDefaultTimeout(PATIENCE_MS);
  await page.goto(server.url);
  const demo = (await lessonsOf(server.url)).map(({ text }) => text);
  const close = async () => {
    await context.close();
    await server.close();
    remove();
  };
  return { url: server.url, page, demo, close };
}

let shared: SharedDesk | null = null;

/** Leaves the shared window to nobody: the next test has another. */
async function leaveShared(): Promise<void> {
  const left = shared;
  shared = null;
  await left?.close();
}

async function leadTo(page: Page, path: string): Promise<void> {
  await page.evaluate((to) => {
    window.history.pushState(null, '', to);
    window.dispatchEvent(new PopStateEvent('popstate'));
  }, path);
}

/** Goes to another screen of the desk that is open, as its own links do, and waits until it is there: no page is loaded anew. */
export function walkTo(page: Page, path: string): Promise<void> {
  return untilQuiet(page, () => leadTo(page, path));
}

/** Shows a test a copy of a demo lesson that is the test's alone. */
export type ShowLesson = (
  title: string,
  view: View,
  size?: { width: number; height: number },
) => Promise<Page>;

/**
 * A desk and a window for all tests of this process that ask for no others: each writes in a lesson of its own, and no
 * page is loaded for it, which takes a second of the processor. After a test that failed there is another window.
 */
export function sharedDesk(browser: Browser): ShowLesson {
  return async (title, view, size = { width: 1440, height: 900 }) => {
    shared ??= await openShared(browser);
    const { url, page, demo } = shared;
    onTestFailed(leaveShared);
    const text = demo.find((each) => each.includes(`title: ${title}\n`));
    if (text === undefined) throw new Error(`no lesson is called ${title}`);
    const data = { text };
    const copy = (await (await page.request.post(`${url}api/lessons`, { data })).json()) as StoredLesson;
    onTestFinished(async () => {
      await leadTo(page, '/').catch(leaveShared);
      // the more lessons there are, the longer the desk takes to show them
      await fetch(new URL(`/api/lessons/${copy.id}`, url), { method: 'DELETE' }).catch(leaveShared);
    });
    await page.setViewportSize(size);
    await page.locator('[data-part="lesson-card"]').first().waitFor();
    await leadTo(page, pathOf({ at: 'lesson', id: copy.id, view }));
    await page.locator('main, [data-part="room"]').first().waitFor();
    await settled(page);
    return page;
  };
}

/** Waits until the server has every change. */
export async function settled(page: Page): Promise<void> {
  await page.locator('[data-part="keeping"][data-keeping="kept"]').waitFor({ state: 'attached' });
}

/** The text of the lesson that is open, as the server has it. */
export async function keptText(page: Page): Promise<string> {
  const id = /\/lesson\/([\w-]+)/.exec(page.url())?.[1];
  const response = await fetch(new URL(`/api/lessons/${id}`, page.url()));
  return ((await response.json()) as StoredLesson).text;
}

/** The lesson that is open, as the server has it. */
export async function keptLesson(page: Page): Promise<Lesson> {
  const text = await keptText(page);
  const { lesson } = parseLesson(text, 'kept');
  if (!lesson) throw new Error(text);
  return lesson;
}
