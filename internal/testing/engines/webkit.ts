/**
 * WebKitGTK, as Debian has it, through WebDriver.
 *
 * Source: W3C WebDriver, endpoints of sessions, elements and scripts; `webkitgtk:browserOptions` of WebKitWebDriver.
 */
import { createServer } from 'node:net';
import { minibrowserPath, webkitDriverPath } from '../programs.mjs';
import { hiddenScreen, silentLoudspeaker, startWithUs, wait } from './devices.ts';
import type { Engine } from './engine.ts';
import { type Find, type Found, FoundPage } from './found-page.ts';

/** Name of a reference to an element in WebDriver. */
const ELEMENT = 'element-6066-11e4-a52e-4f735466cecf';

/** A script that awaits what a function, by its text, makes of the script's first argument. */
const awaiting = (work: string) => `
const done = arguments[arguments.length - 1];
const args = arguments[0];
Promise.resolve().then(() => (${work})(...args))
  .then((value) => done({ value: value === undefined ? null : value }), (error) => done({ error: String(error) }));
`;

/** Milliseconds after which a function in a page is given up. */
const SCRIPT_MS = 60_000;

type Call = (method: 'GET' | 'POST' | 'DELETE', path: string, body?: object) => Promise<unknown>;

/** Speaks to a driver at an address. */
function caller(url: string): Call {
  return async (method, path, body) => {
    const answer = await fetch(url + path, { method, ...(body ? { body: JSON.stringify(body) } : {}) });
    const { value } = (await answer.json()) as { value: { error?: string; message?: string } };
    if (!answer.ok) throw new Error(`${method} ${path}: ${value.error} ${value.message}`);
    return value;
  };
}

class WebKitPage extends FoundPage {
  readonly #call: Call;

  constructor(call: Call) {
    super();
    this.#call = call;
  }

  async go(url: string): Promise<void> {
    await this.#call('POST', '/url', { url });
  }

  async reload(): Promise<void> {
    await this.#call('POST', '/refresh', {});
  }

  async run<A extends readonly unknown[], T>(work: (...args: A) => T, ...args: A): Promise<Awaited<T>> {
    const told = await this.#call('POST', '/execute/async', { script: awaiting(`${work}`), args: [args] });
    const { value, error } = told as { value: Awaited<T>; error?: string };
    if (error !== undefined) throw new Error(error);
    return value;
  }

  protected async find(find: Find, css: string, named: string | null): Promise<Found | null> {
    const script = `return (${find})(arguments[0], arguments[1]);`;
    const found = await this.#call('POST', '/execute/sync', { script, args: [css, named] });
    const id = (found as Record<string, string> | null)?.[ELEMENT];
    return id === undefined ? null : { click: () => this.#click(id) };
  }

  async #click(id: string): Promise<void> {
    // The driver brings an element to the edge of the page only, where something may stand over it.
    const script = "arguments[0].scrollIntoView({ block: 'center', behavior: 'instant' });";
    await this.#call('POST', '/execute/sync', { script, args: [{ [ELEMENT]: id }] });
    await this.#call('POST', `/element/${id}/click`, {});
  }

  async resize(width: number, height: number): Promise<void> {
    const [wide, high] = await this.run(() => [
      window.outerWidth - window.innerWidth,
      window.outerHeight - window.innerHeight,
    ]);
    const rect = { width: width + (wide ?? 0), height: height + (high ?? 0) };
    await this.#call('POST', '/window/rect', rect);
  }

  async picture(): Promise<Buffer> {
    return Buffer.from((await this.#call('GET', '/screenshot')) as string, 'base64');
  }

  async close(): Promise<void> {
    await this.#call('DELETE', '');
  }
}

async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((resolve) => {
    server.listen(0, '127.0.0.1', resolve);
  });
  const address = server.address();
  await new Promise((resolve) => {
    server.close(resolve);
  });
  return typeof address === 'object' && address ? address.port : 0;
}

/** Starts the driver; it starts a browser for each page. */
async function startDriver(): Promise<Call> {
  const port = await freePort();
  const env = { ...(await hiddenScreen()), ...(await silentLoudspeaker()) };
  startWithUs(webkitDriverPath(), [`--port=${port}`], env);
  const call = caller(`http://127.0.0.1:${port}`);
  await wait('WebKitWebDriver', () =>
    call('GET', '/status').then(
      () => true,
      () => false,
    ),
  );
  return call;
}

let driver: ReturnType<typeof startDriver> | null = null;

/** WebKitGTK. */
export const WEBKIT: Engine = {
  name: 'webkit',
  open: async () => {
    driver ??= startDriver();
    const call = await driver;
    const args = ['--automation', '--enable-media-stream=true', '--enable-mock-capture-devices=true'];
    const capabilities = {
      alwaysMatch: { 'webkitgtk:browserOptions': { binary: minibrowserPath(), args } },
    };
    const { sessionId } = (await call('POST', '/session', { capabilities })) as { sessionId: string };
    const own: Call = (method, path, body) => call(method, `/session/${sessionId}${path}`, body);
    await own('POST', '/timeouts', { script: SCRIPT_MS });
    return new WebKitPage(own);
  },
};
