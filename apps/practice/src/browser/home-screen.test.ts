import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, it, onTestFinished } from 'vitest';
import { openWindow, sharedBrowser } from '../../../../internal/testing/browser.ts';
import { makeHearingPack } from '../../../../internal/testing/hearing.ts';
import { hostFolder, temporaryFolder } from '../../../../internal/testing/practice.ts';

const browser = await sharedBrowser();

interface Icon {
  readonly src: string;
  readonly sizes: string;
  readonly type: string;
  readonly purpose: string;
}

/** Pixels of a picture that are not of one colour, or not opaque, outside a circle about its middle. */
function strayPixels(page: Page, url: string, radius: number): Promise<number> {
  return page.evaluate(
    async ([address, part]) => {
      const image = await createImageBitmap(await (await fetch(address)).blob());
      const pen = new OffscreenCanvas(image.width, image.height).getContext('2d');
      pen?.drawImage(image, 0, 0);
      const { data = [] } = pen?.getImageData(0, 0, image.width, image.height) ?? {};
      const middle = image.width / 2;
      let stray = 0;
      for (let i = 0; i < data.length / 4; i += 1) {
        const away = Math.hypot((i % image.width) + 0.5 - middle, Math.floor(i / image.width) + 0.5 - middle);
        const isGround = [0, 1, 2, 3].every((c) => data[4 * i + c] === (c === 3 ? 255 : data[c]));
        if (away > part * image.width && !isGround) stray += 1;
      }
      return stray;
    },
    [url, radius] as const,
  );
}

/** A pack on a host, gone when the test ends. */
async function hostPack(): Promise<{ readonly url: string; readonly path: string }> {
  const folder = temporaryFolder();
  await makeHearingPack('title: Jazz & brushes\nexercises: [x . x .]\n', folder.path);
  const host = await hostFolder(folder.path);
  onTestFinished(async () => {
    await host.stop();
    folder.remove();
  });
  return { url: host.url, path: folder.path };
}

it('[ST2705] has its own icons for home screens of both systems, under the lesson’s name', async () => {
  const host = await hostPack();
  const manifest = JSON.parse(readFileSync(join(host.path, 'manifest.webmanifest'), 'utf8'));
  const icons = (manifest.icons as readonly Icon[]).filter(({ type }) => type === 'image/png');
  expect(icons.map(({ sizes, purpose }) => `${sizes} ${purpose}`)).toEqual([
    ...['192x192 any', '512x512 any', '512x512 maskable'],
  ]);
  for (const { src, sizes } of icons) {
    const file = readFileSync(join(host.path, src));
    // standard: ISO/IEC 15948, 11.2.2: width and height stand at bytes 16 and 20
    expect(`${file.readUInt32BE(16)}x${file.readUInt32BE(20)}`).toBe(sizes);
  }
  const page = await openWindow(browser, host.url);
  const head = (css: string, name: string) => page.locator(css).getAttribute(name);
  expect(await head('meta[name="apple-mobile-web-app-title"]', 'content')).toBe('Jazz & brushes');
  const touch = new URL((await head('link[rel="apple-touch-icon"]', 'href')) ?? '', host.url).href;
  // published: Apple, Configuring Web Applications: 180 pixels on a telephone; what is transparent turns black there
  expect(readFileSync(join(host.path, 'icon-180.png')).readUInt32BE(16)).toBe(180);
  expect(await strayPixels(page, touch, 0.6)).toBe(0);
  // standard: W3C Web Application Manifest, maskable icons: a circle of 40 % of the width stays whole
  expect(await strayPixels(page, new URL('icon-maskable-512.png', host.url).href, 0.4)).toBe(0);
});

interface StartPicture {
  readonly media: string;
  readonly size: string;
  /** The colour of its corner, in hexadecimal digits. */
  readonly ground: string;
  /** Whether something else stands on it. */
  readonly hasMark: boolean;
}

/** Runs in the page: the pictures that are shown while it opens. */
function startPictures(): Promise<readonly StartPicture[]> {
  const look = async ({ href, media }: HTMLLinkElement) => {
    const image = await createImageBitmap(await (await fetch(href)).blob());
    const { width, height } = image;
    const pen = new OffscreenCanvas(width, height).getContext('2d');
    pen?.drawImage(image, 0, 0);
    const { data } = pen?.getImageData(0, 0, width, height) ?? { data: new Uint8ClampedArray(4) };
    const ground = [0, 1, 2].map((c) => (data[c] ?? 0).toString(16).padStart(2, '0')).join('');
    const hasMark = data.some((each, i) => each !== data[i % 4]);
    return { media, size: `${width}x${height}`, ground: `#${ground}`, hasMark };
  };
  const links = document.querySelectorAll<HTMLLinkElement>('link[rel="apple-touch-startup-image"]');
  return Promise.all([...links].map(look));
}

it('[ST3702] has a start picture for each position and ground where a home screen wants one, and none elsewhere', async () => {
  const { url } = await hostPack();
  const phone = {
    viewport: { width: 390, height: 700 },
    screen: { width: 390, height: 844 },
    deviceScaleFactor: 3,
  };
  const plain = await openWindow(browser, url, phone);
  await plain.getByRole('heading', { level: 1 }).waitFor();
  const page = await openWindow(browser, 'about:blank', phone);
  await page.addInitScript(() => Object.assign(navigator, { standalone: false }));
  await page.goto(url);
  await expect.poll(() => page.locator('link[rel="apple-touch-startup-image"]').count()).toBe(4);
  const dark = '(prefers-color-scheme: dark)';
  const light = '(prefers-color-scheme: light)';
  const [upright, lying] = ['and (orientation: portrait)', 'and (orientation: landscape)'];
  // published: Apple, Configuring Web Applications: as large as the screen, in its own pixels
  expect(await page.evaluate(startPictures)).toEqual([
    { media: `${light} ${upright}`, size: '1170x2532', ground: '#ccd4d2', hasMark: true },
    { media: `${light} ${lying}`, size: '2532x1170', ground: '#ccd4d2', hasMark: true },
    { media: `${dark} ${upright}`, size: '1170x2532', ground: '#101416', hasMark: true },
    { media: `${dark} ${lying}`, size: '2532x1170', ground: '#101416', hasMark: true },
  ]);
  expect(await plain.evaluate(startPictures)).toEqual([]);
});
