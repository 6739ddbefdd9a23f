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

it('[ST2705] has its own icons for home screens of both systems, under the lesson’s name', async () => {
  const folder = temporaryFolder();
  await makeHearingPack('title: Jazz & brushes\nexercises: [x . x .]\n', folder.path);
  const host = await hostFolder(folder.path);
  onTestFinished(async () => {
    await host.stop();
    folder.remove();
  });
  const manifest = JSON.parse(readFileSync(join(folder.path, 'manifest.webmanifest'), 'utf8'));
  const icons = (manifest.icons as readonly Icon[]).filter(({ type }) => type === 'image/png');
  expect(icons.map(({ sizes, purpose }) => `${sizes} ${purpose}`)).toEqual([
    ...['192x192 any', '512x512 any', '512x512 maskable'],
  ]);
  for (const { src, sizes } of icons) {
    const file = readFileSync(join(folder.path, src));
    // standard: ISO/IEC 15948, 11.2.2: width and height stand at bytes 16 and 20
    expect(`${file.readUInt32BE(16)}x${file.readUInt32BE(20)}`).toBe(sizes);
  }
  const page = await openWindow(browser, host.url);
  const head = (css: string, name: string) => page.locator(css).getAttribute(name);
  expect(await head('meta[name="apple-mobile-web-app-title"]', 'content')).toBe('Jazz & brushes');
  const touch = new URL((await head('link[rel="apple-touch-icon"]', 'href')) ?? '', host.url).href;
  // published: Apple, Configuring Web Applications: 180 pixels on a telephone; what is transparent turns black there
  expect(readFileSync(join(folder.path, 'icon-180.png')).readUInt32BE(16)).toBe(180);
  expect(await strayPixels(page, touch, 0.6)).toBe(0);
  // standard: W3C Web Application Manifest, maskable icons: a circle of 40 % of the width stays whole
  expect(await strayPixels(page, new URL('icon-maskable-512.png', host.url).href, 0.4)).toBe(0);
});
