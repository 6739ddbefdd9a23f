import { expect, it } from 'vitest';
import { ENGLISH_SHEET } from '../../../../internal/testing/in-english.ts';
import { readPdf, readStructure } from '../../../../internal/testing/pdf.ts';
import { engraver, fonts, lessonOf } from '../../test/setup.ts';
import { writePdf } from '../pdf/write-pdf.ts';
import type { ImageItem, Item } from './item.ts';
import type { PrintedMedia } from './printed-media.ts';
import { layOutSheet } from './sheet.ts';

/** A PNG of one black pixel. Source: PNG 11.2.2 (header) and 10.1 (zlib). */
const DATA = 'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR42mNgAAAAAgAB4iG8MwAAAABJRU5ErkJggg==';
const DATA_URI = `data:image/png;base64,${DATA}`;

const LESSON = lessonOf(`title: The grip
exercises:
  - {pattern: x x x x, media: {file: tall.png, says: From above}}
  - {pattern: x . x ., media: slow.mp3}
  - {pattern: . x . x, media: {file: arm.mp4, says: The arm}}
text: |
  ![Wide](wide.png)
`);

const MEDIA: PrintedMedia = new Map([
  ['wide.png', { kind: 'picture', widthPx: 300, heightPx: 150, dataUri: DATA_URI }],
  ['tall.png', { kind: 'picture', widthPx: 1000, heightPx: 4000, dataUri: DATA_URI }],
  ['arm.mp4', { kind: 'code', svg: '<svg viewBox="0 0 3 3"><path fill="#000" d="M0 0h1v1h-1z"/></svg>' }],
]);

const flat = (items: readonly Item[]): readonly Item[] =>
  items.flatMap((item) => (item.kind === 'group' ? flat(item.items) : [item]));

function textsOf(items: readonly Item[]): string {
  return items.flatMap((item) => (item.kind === 'text' ? item.runs.map(({ text }) => text) : [])).join(' ');
}

it('[EN4201] prints pictures in their places, codes to scan, and the names of other files', async () => {
  const sheet = layOutSheet(LESSON, { engraver, fonts, words: ENGLISH_SHEET, media: MEDIA });
  const items = sheet.pages.flatMap((page) => flat(page.items));
  const [wide, tall] = items.filter((item): item is ImageItem => item.kind === 'image');
  // definition: 300 pixels at 150 to the inch are two inches
  expect([wide?.width, wide?.height]).toEqual([2 * 25.4, 25.4]);
  expect(wide?.alt).toBe('Wide');
  expect((tall?.height ?? 0) / (tall?.width ?? 1)).toBeCloseTo(4, 9);
  expect(tall?.height).toBeLessThan(50);
  expect(items.filter(({ kind }) => kind === 'picture')).toHaveLength(1);
  const texts = textsOf(items);
  for (const text of ['From above', 'The arm', 'Scan to watch it', 'sound: slow.mp3, beside the lesson'])
    expect(texts).toContain(text);
  expect(sheet.pages[0]?.svg).toContain(`aria-label="Wide" href="${DATA_URI}"`);
  const bytes = await writePdf(sheet.pages, fonts, sheet);
  // library: pdf.js 5.4
  expect((await readPdf(bytes)).pages.reduce((sum, { bitmaps }) => sum + bitmaps, 0)).toBe(2);
  const alts = JSON.stringify((await readStructure(bytes)).pages);
  for (const alt of ['Wide', 'From above']) expect(alts).toContain(`"alt":"${alt}"`);
});

it('[EN4201] names every file where none is given', () => {
  const { pages } = layOutSheet(LESSON, { engraver, fonts, words: ENGLISH_SHEET });
  const texts = textsOf(pages.flatMap((page) => flat(page.items)));
  for (const file of ['tall.png', 'wide.png', 'slow.mp3', 'arm.mp4']) expect(texts).toContain(file);
});
