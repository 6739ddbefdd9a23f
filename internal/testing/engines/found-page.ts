/** What is looked for and pressed in a page whose driver hands elements over. */
import { type EnginePage, findTarget, type Target } from './engine.ts';

/** An element of a page, as its driver has it. */
export interface Found {
  click(): Promise<void>;
}

/** Runs in the page: the element of a selector and a name. */
export type Find = typeof findTarget;

/** What drivers say of an element that the page took away or drew anew before they were done with it. */
const WENT_AWAY = /stale element|no such (?:element|node)|detached|not attached|not clickable/i;

/** What came of work with an element; null where that one went away meanwhile. @throws Error where it failed otherwise */
async function unlessGone<T>(work: () => Promise<T>): Promise<T | null> {
  try {
    return await work();
  } catch (error) {
    if (WENT_AWAY.test(`${error}`)) return null;
    throw error;
  }
}

/** A page that finds elements by a function which runs in it. */
export abstract class FoundPage implements EnginePage {
  abstract go(url: string): Promise<void>;
  abstract reload(): Promise<void>;
  abstract run<A extends readonly unknown[], T>(work: (...args: A) => T, ...args: A): Promise<Awaited<T>>;
  abstract resize(width: number, height: number): Promise<void>;
  abstract picture(): Promise<Buffer>;
  abstract close(): Promise<void>;

  /** What a function finds in the page; null where that is nothing. */
  protected abstract find(find: Find, css: string, named: string | null): Promise<Found | null>;

  #find({ css, named = null }: Target): Promise<Found | null> {
    return unlessGone(() => this.find(findTarget, css, named));
  }

  async has(target: Target): Promise<boolean> {
    return (await this.#find(target)) !== null;
  }

  async press(target: Target): Promise<boolean> {
    const element = await this.#find(target);
    const pressed = element && (await unlessGone(() => element.click().then(() => true)));
    return pressed === true;
  }
}
