/** Chromium, the one that all browser tests of a process share. */
import type { Page } from 'playwright-core';
import { PATIENCE_MS, sharedBrowser } from '../browser.ts';
import type { Engine } from './engine.ts';
import { type Find, type Found, FoundPage } from './found-page.ts';

class ChromiumPage extends FoundPage {
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
    const call = `(${work})(...${JSON.stringify(args)})`;
    return (await this.#page.evaluate(call)) as Awaited<T>;
  }

  protected async find(find: Find, css: string, named: string | null): Promise<Found | null> {
    const call = `(${find})(${JSON.stringify(css)}, ${JSON.stringify(named)})`;
    return (await this.#page.evaluateHandle(call)).asElement();
  }

  async resize(width: number, height: number): Promise<void> {
    await this.#page.setViewportSize({ width, height });
  }

  async picture(): Promise<Buffer> {
    return this.#page.screenshot();
  }

  async close(): Promise<void> {
    await this.#page.context().close();
  }
}

/** Chromium. */
export const CHROMIUM: Engine = {
  name: 'chromium',
  open: async () => {
    const browser = await sharedBrowser();
    const context = await browser.newContext({ locale: 'en' });
    const page = await context.newPage();
    page.setDefaultTimeout(PATIENCE_MS);
    return new ChromiumPage(page);
  },
};
