/** Firefox, through WebDriver BiDi. */
import { type Browser, type ElementHandle, launch, type Page } from 'puppeteer-core';
import { firefoxPath } from '../programs.mjs';
import { END_WITH_US, silentLoudspeaker } from './devices.ts';
import type { Engine } from './engine.ts';
import { type Find, type Found, FoundPage } from './found-page.ts';

/** A browser for tests: sound without asking, a microphone that gives a tone, one process for pages. */
const PREFERENCES = {
  'media.autoplay.default': 0,
  'media.navigator.permission.disabled': true,
  'media.navigator.streams.fake': true,
  'dom.ipc.processCount': 1,
  'dom.ipc.processPrelaunch.enabled': false,
  'fission.autostart': false,
  'intl.accept_languages': 'en',
};

async function start(): Promise<Browser> {
  return launch({
    browser: 'firefox',
    executablePath: END_WITH_US,
    headless: true,
    env: { ...process.env, ...(await silentLoudspeaker()), SHEDBOOK_RUNS: firefoxPath() },
    extraPrefsFirefox: PREFERENCES,
    protocolTimeout: 240_000,
  });
}

class FirefoxPage extends FoundPage {
  readonly #page: Page;

  constructor(page: Page) {
    super();
    this.#page = page;
  }

  async go(url: string): Promise<void> {
    await this.#page.goto(url);
  }

  async reload(): Promise<void> {
    await this.#page.reload();
  }

  async run<A extends readonly unknown[], T>(work: (...args: A) => T, ...args: A): Promise<Awaited<T>> {
    return (await this.#page.evaluate(work as never, ...(args as unknown as []))) as Awaited<T>;
  }

  protected async find(find: Find, css: string, named: string | null): Promise<Found | null> {
    return (await this.#page.evaluateHandle(find, css, named)).asElement() as ElementHandle | null;
  }

  async resize(width: number, height: number): Promise<void> {
    await this.#page.setViewport({ width, height });
  }

  async picture(): Promise<Buffer> {
    return Buffer.from(await this.#page.screenshot());
  }

  async close(): Promise<void> {
    await this.#page.browserContext().close();
  }
}

let running: ReturnType<typeof start> | null = null;

/** Firefox. */
export const FIREFOX: Engine = {
  name: 'firefox',
  open: async () => {
    running ??= start();
    const context = await (await running).createBrowserContext();
    const page = await context.newPage();
    return new FirefoxPage(page);
  },
};
