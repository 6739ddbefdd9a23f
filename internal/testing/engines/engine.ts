/**
 * For browser tests that are told in several engines: the little that a person does with a page, the same in each.
 *
 * Conventions: functions run in the page; what they get and give is JSON. Clicks are real ones, so that a page may sound.
 */
import { PATIENCE_MS } from '../browser.ts';

/** The engines that the stories are told in. */
export type EngineName = 'chromium' | 'firefox' | 'webkit';

/** An element of the page: the first one in sight that fits. */
export interface Target {
  readonly css: string;
  /** What it is called, whole: its label, or else its text. */
  readonly named?: string | null;
}

/** A page in an engine. */
export interface EnginePage {
  go(url: string): Promise<void>;
  reload(): Promise<void>;
  /** Runs a function in the page. @returns what it gives, once that is there */
  run<A extends readonly unknown[], T>(work: (...args: A) => T, ...args: A): Promise<Awaited<T>>;
  /** Whether something fits. */
  has(target: Target): Promise<boolean>;
  /** Clicks as a person does. @returns false where nothing fits, or where it went away before it was clicked on */
  press(target: Target): Promise<boolean>;
  resize(width: number, height: number): Promise<void>;
  /** The page as a PNG. */
  picture(): Promise<Buffer>;
  close(): Promise<void>;
}

/** An engine that runs. */
export interface Engine {
  readonly name: EngineName;
  /** A page with a storage of its own. */
  open(): Promise<EnginePage>;
}

/** Milliseconds between two looks at a page. */
const LOOK_MS = 80;

/** Runs in the page: the first element in sight that fits, or null. */
export function findTarget(css: string, named: string | null): Element | null {
  const callIt = (element: Element) => element.getAttribute('aria-label') ?? element.textContent ?? '';
  const fits = (element: Element) =>
    element.getClientRects().length > 0 && (named === null || callIt(element).trim() === named);
  return [...document.querySelectorAll(css)].find(fits) ?? null;
}

async function soon<T>(page: EnginePage, what: string, look: () => Promise<T>): Promise<T> {
  const end = Date.now() + PATIENCE_MS;
  for (;;) {
    const seen = await look();
    if (seen) return seen;
    if (Date.now() > end) {
      const says = await page.run(() => document.body.textContent);
      throw new Error(`never came: ${what}\nThe page says: ${says}`);
    }
    await new Promise((resolve) => setTimeout(resolve, LOOK_MS));
  }
}

/** Looks at a page until something is so. @throws Error that says what never was */
export function until<A extends readonly unknown[], T>(
  page: EnginePage,
  what: string,
  look: (...args: A) => T,
  ...args: A
): Promise<Awaited<T>> {
  return soon(page, what, () => page.run(look, ...args));
}

const spelled = ({ css, named }: Target) => `${css} ${named ?? ''}`;

/** Waits until an element is in sight. @throws Error where it never comes */
export async function sees(page: EnginePage, target: Target): Promise<void> {
  await soon(page, spelled(target), () => page.has(target));
}

/** Waits for an element and clicks on it. @throws Error where it never comes */
export async function press(page: EnginePage, target: Target): Promise<void> {
  await soon(page, spelled(target), () => page.press(target));
}
