import { readFile } from 'node:fs/promises';
import { isStruck, parseLesson } from '@shedbook/core';
import type { StoredLesson } from '@shedbook/routes';
import { unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import {
  keptText,
  openView,
  openWindow,
  settled,
  sharedBrowser,
  sharedDesk,
  startDesk,
} from '../../../../internal/testing/browser.ts';
import { drawPdf, readPdf } from '../../../../internal/testing/pdf.ts';

const browser = await sharedBrowser();
const show = sharedDesk(browser);

/** So high that the ledge lies under the pages and not over them. */
const TALL = { width: 1440, height: 3200 };

async function downloadPdf(page: Page): Promise<Uint8Array> {
  const download = page.waitForEvent('download');
  await page.getByRole('link', { name: 'Download PDF' }).click();
  return readFile(await (await download).path());
}

/** How alike two pictures are: the correlation of their darkness over cells of 8 by 8 pixels, the size of a notehead. */
function likeness(page: Page, a: string, b: string): Promise<number> {
  return page.evaluate(
    async (pictures) => {
      const load = async (data: string) => {
        const image = new Image();
        image.src = `data:image/png;base64,${data}`;
        await image.decode();
        return image;
      };
      const [first, second] = await Promise.all(pictures.map(load));
      const [width, height] = [Math.round((first?.width ?? 0) / 8), Math.round((first?.height ?? 0) / 8)];
      const darkness = [first, second].map((image) => {
        const canvas = new OffscreenCanvas(width, height);
        const context = canvas.getContext('2d') as OffscreenCanvasRenderingContext2D;
        context.imageSmoothingQuality = 'high';
        context.drawImage(image as HTMLImageElement, 0, 0, width, height);
        const { data } = context.getImageData(0, 0, width, height);
        return Array.from({ length: width * height }, (_, i) => 255 - (data[i * 4 + 1] ?? 0));
      }) as [number[], number[]];
      const mean = (values: number[]) => values.reduce((sum, each) => sum + each, 0) / values.length;
      const [ma, mb] = [mean(darkness[0]), mean(darkness[1])];
      const dot = (x: number[], mx: number, y: number[], my: number) =>
        x.reduce((sum, each, i) => sum + (each - mx) * ((y[i] ?? 0) - my), 0);
      const [p, q] = darkness;
      return dot(p, ma, q, mb) / Math.sqrt(dot(p, ma, p, ma) * dot(q, mb, q, mb));
    },
    [a, b],
  );
}

it('[ST23] previews the pages that the file has, on either paper, and keeps what was chosen', async () => {
  const page = await show('First swing', 'print', TALL);
  const preview = page.locator('[data-part="print-page"] svg:not(svg svg)');
  await preview.first().waitFor();
  for (const [paper, size] of [
    // standard: ISO 216, A4 is 210 by 297 mm; ANSI/ASME Y14.1, Letter is 8.5 by 11 in; a point is 1/72 in
    ['A4', { width: 595.28, height: 841.89 }],
    ['Letter', { width: 612, height: 792 }],
  ] as const) {
    await page.getByText(paper, { exact: true }).click();
    await settled(page);
    await page.locator('[data-part="print-pages"][aria-busy="false"]').waitFor();
    const pdf = await downloadPdf(page);
    // library: pdf.js 5.4
    for (const { widthPt, heightPt } of (await readPdf(pdf)).pages) {
      expect(widthPt).toBeCloseTo(size.width, 2);
      expect(heightPt).toBeCloseTo(size.height, 2);
    }
    const width = Math.round((await preview.first().boundingBox())?.width ?? 0);
    const printed = (await drawPdf(pdf, () => width)).map(({ png }) => png.toString('base64'));
    expect(await preview.count()).toBe(printed.length);
    for (const [index, picture] of printed.entries()) {
      const shown = (await preview.nth(index).screenshot()).toString('base64');
      const other = printed[(index + 1) % printed.length] ?? '';
      // definition: a page is its own picture and no other; two programs draw hairlines a little differently
      expect(await likeness(page, shown, picture)).toBeGreaterThan(0.85);
      expect(await likeness(page, shown, other)).toBeLessThan(0.5);
    }
  }
  await page.getByText('Counts under the notes').click();
  await settled(page);
  const { lesson } = parseLesson(await keptText(page), 'kept');
  expect(lesson?.sheet.paper).toBe('Letter');
  const counts = lesson?.sheet.counts;
  await page.reload();
  await preview.first().waitFor();
  expect(await page.getByRole('radio', { name: 'Letter' }).isChecked()).toBe(true);
  expect(await page.getByRole('checkbox', { name: 'Counts under the notes' }).isChecked()).toBe(counts);
});

async function choose(page: Page, lesson: string, action: string): Promise<void> {
  await page.getByRole('button', { name: `More for ${lesson}`, exact: true }).click();
  await page.getByRole('menuitem', { name: action, exact: true }).click();
}

it.each([
  ['MusicXML', 'Export MusicXML', 'first-swing.musicxml', /^<\?xml[\s\S]*<score-partwise version="4\.0"/],
  // standard: RP-001 (SMF 1.0), a file begins with the chunk MThd
  ['MIDI', 'Export MIDI', 'first-swing.mid', /^MThd/],
] as const)(
  '[ST32] lets a lesson out as %s and takes it in again with the same bars',
  async (_, action, name, begins) => {
    const { url } = await startDesk();
    const page = await openWindow(browser, url);
    await page.locator('[data-part="lesson-card"]').nth(4).waitFor();
    const download = page.waitForEvent('download');
    await choose(page, 'First swing', action);
    const file = await download;
    expect(file.suggestedFilename()).toBe(name);
    const buffer = await readFile(await file.path());
    expect(buffer.toString('latin1')).toMatch(begins);
    const chooser = page.waitForEvent('filechooser');
    const stored = async () =>
      (await (await fetch(new URL('/api/lessons', url))).json()) as readonly StoredLesson[];
    const before = await stored();
    await page.getByRole('button', { name: 'Import' }).click();
    await (await chooser).setFiles({ name, mimeType: 'application/octet-stream', buffer });
    await page.locator('[data-part="lesson-card"]').nth(before.length).waitFor();
    const lessons = await stored();
    const imported = parseLesson(lessons[0]?.text ?? '', 'imported').lesson;
    const original = parseLesson(await readFile('demo/first-swing.lesson.yaml', 'utf8'), 'original').lesson;
    // definition: a beat says when its strokes fall, so that `x..` and `x` are the same bar
    const bars = (lesson: typeof original) =>
      lesson?.exercises.map((each) =>
        each.parts[0]?.pattern.bars.map((cells) =>
          cells.map(({ marks }) =>
            marks.flatMap((mark, slot) => (isStruck(mark) ? [slot / marks.length] : [])),
          ),
        ),
      );
    expect(bars(imported)).toEqual(bars(original));
  },
);

it('[ST4206] [ST6206] keeps every picture of several that are dropped beside a lesson at once, and gives them out with it', async () => {
  const page = await openView(browser, 'First swing', 'page', { viewport: TALL });
  await page
    .locator('header')
    .filter({ has: page.getByLabel('Title') })
    .evaluate(async (heading) => {
      const transfer = new DataTransfer();
      for (const colour of ['#800', '#080']) {
        const canvas = new OffscreenCanvas(40, 30);
        const context = canvas.getContext('2d') as OffscreenCanvasRenderingContext2D;
        context.fillStyle = colour;
        context.fillRect(0, 0, 40, 30);
        transfer.items.add(new File([await canvas.convertToBlob()], `grip ${colour.slice(1)}.png`));
      }
      heading.dispatchEvent(
        new DragEvent('drop', { dataTransfer: transfer, bubbles: true, cancelable: true }),
      );
    });
  const shown = page.locator('[data-part="media"] img');
  await expect.poll(() => shown.count()).toBe(2);
  await settled(page);
  const { lesson } = parseLesson(await keptText(page), 'kept');
  expect(lesson?.media?.map(({ says }) => says)).toEqual(['grip 800', 'grip 080']);
  // as a file it has them with it, at another desk too
  await page.getByRole('button', { name: 'All lessons' }).click();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'More for First swing', exact: true }).click();
  await page.getByRole('menuitem', { name: 'Export lesson file', exact: true }).click();
  const file = await download;
  expect(file.suggestedFilename()).toBe('first-swing.zip');
  const packed = await readFile(await file.path());
  const paths = lesson?.media?.map(({ path }) => path) ?? [];
  // library: fflate 0.8
  expect(Object.keys(unzipSync(packed)).toSorted()).toEqual(['first-swing.lesson.yaml', ...paths].toSorted());
  const elsewhere = await openWindow(browser, (await startDesk()).url);
  await elsewhere.locator('[data-part="lesson-card"]').nth(5).waitFor();
  const chooser = elsewhere.waitForEvent('filechooser');
  await elsewhere.getByRole('button', { name: 'Import' }).click();
  const sent = { name: 'first-swing.zip', mimeType: 'application/zip', buffer: packed };
  await (await chooser).setFiles(sent);
  await elsewhere.getByText('First swing is on the desk.').waitFor();
  for (const path of paths) {
    const shownThere = await elsewhere.request.get(new URL(`/api/${path}`, elsewhere.url()).href);
    expect(shownThere.status()).toBe(200);
  }
});
