/** Chromium, the one that all browser tests of a process share. */
import type { ElementHandle, Page } from 'playwright-core';
import { PATIENCE_MS, sharedBrowser } from '../browser.ts';
import { type Engine, type EnginePage, findTarget, type Target } from './engine.ts';

class ChromiumPage implements EnginePage {
  readonly #page: Page;

  constructor(page: Page) {
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

  async #find({ css, named = null }: Target): Promise<ElementHandle | null> {
    const call = `(${findTarget})(${JSON.stringify(css)}, ${JSON.stringify(named)})`;
    return (await this.#page.evaluateHandle(call)).asElement();
  }

  async has(target: Target): Promise<boolean> {
    return (await this.#find(target)) !== null;
  }

  async press(target: Target): Promise<void> {
    const element = await this.#find(target);
    if (!element) throw new Error(`nothing to press: ${target.css} ${target.named}`);
    await element.click();
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
