import { chromium } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { ENGLISH_SHEET, GERMAN_SHEET } from '../../../../internal/testing/in-english.ts';
import { drawPdf, type PdfPart, readPdf, readStructure } from '../../../../internal/testing/pdf.ts';
import { chromiumPath } from '../../../../internal/testing/programs.mjs';
import { barsOf, engraver, fonts, lessonOf, unusedFonts } from '../../test/setup.ts';
import { layOut } from '../../test/sheets.ts';
import { layOutSheet, type Sheet } from '../sheet/sheet.ts';
import type { Fonts } from '../text/fonts.ts';
import { writePdf } from './write-pdf.ts';

const LESSON = `title: First swing
by: Oda Lindqvist-Reyes
feel: triplet
exercises: ["x.. ..x x.x ...", { pattern: "X g f d", name: "Größe", notes: "Let it ring." }, "b s r x"]
`;

function sheetOf(paper: 'A4' | 'Letter'): Sheet {
  const codeSvg = '<svg viewBox="0 0 3 3"><path fill="#000" d="M0 0h1v1h-1zM2 2h1v1h-1z"/></svg>';
  return layOutSheet(lessonOf(LESSON), {
    engraver,
    fonts,
    words: ENGLISH_SHEET,
    paper,
    counts: true,
    codeSvg,
  });
}

const bytesOf = (sheet: Sheet) => writePdf(sheet.pages, fonts, { title: sheet.title, author: sheet.by });

describe('PDF', () => {
  it("[EN36] has the paper's size, embedded fonts and no bitmap", async () => {
    for (const [paper, width, height] of [
      // standard: ISO 216: 210 × 297 mm, in points of 1/72 inch
      ['A4', (210 / 25.4) * 72, (297 / 25.4) * 72],
      // standard: ANSI/ASME Y14.1: 8.5 × 11 inches
      ['Letter', 612, 792],
    ] as const) {
      // library: pdf.js 5.4
      const { pages } = await readPdf(await bytesOf(sheetOf(paper)));
      expect(pages.length).toBeGreaterThan(0);
      for (const page of pages) {
        expect(page.widthPt).toBeCloseTo(width, 2);
        expect(page.heightPt).toBeCloseTo(height, 2);
        expect(page.fonts.length).toBeGreaterThan(0);
        for (const font of page.fonts) {
          expect(font).toMatchObject({ isEmbedded: true, isSubset: true });
          expect(font.name).toContain('FiraSans');
          // definition: a letter that the file maps to no character is read as a control or private character
          const read = page.texts
            .filter((each) => each.font === font.name)
            .map(({ text }) => text)
            .join('');
          expect(read).toMatch(/^[^\p{Cc}\p{Co}\p{Cn}\uFFFD]+$/u);
        }
        expect(page.bitmaps).toBe(0);
      }
    }
  });

  it('[EN37] text and title can be read out of it', async () => {
    const { title, author, pages } = await readPdf(await bytesOf(sheetOf('A4')));
    const text = pages.flatMap(({ texts }) => texts.map((each) => each.text));
    for (const each of ['First swing', 'Oda Lindqvist-Reyes', 'Größe', 'Let it ring.', 'trip', '= 80'])
      expect(text).toContain(each);
    expect(title).toBe('First swing');
    expect(author).toBe('Oda Lindqvist-Reyes');
  });

  it('[EN52] says headings, paragraphs and every exercise to those who listen, in their language', async () => {
    const sections = LESSON.replace(
      'exercises:',
      'sections:\n  - heading: Ride\n    text: Sing it.\n    exercises:',
    );
    for (const [words, language, first] of [
      [ENGLISH_SHEET, 'en', 'Exercise 1. Snare: 1, 2 let, 3, 3 let.'],
      [GERMAN_SHEET, 'de', 'Übung 1. '],
    ] as const) {
      const sheet = layOutSheet(lessonOf(sections), { engraver, fonts, words });
      const bytes = await writePdf(sheet.pages, fonts, sheet);
      // library: pdf.js 5.4
      const structure = await readStructure(bytes);
      expect([structure.language, structure.isMarked]).toEqual([language, true]);
      // standard: XMP, pdfuaid:part (ISO 14289-1, 5)
      expect(Buffer.from(bytes).toString('latin1')).toContain('<pdfuaid:part>1</pdfuaid:part>');
      const flat = (parts: readonly PdfPart[]): readonly PdfPart[] =>
        parts.flatMap((part) => [part, ...flat(part.parts)]);
      const all = structure.pages.flatMap(flat);
      const headings = all.map(({ role }) => role).filter((role) => role.startsWith('H'));
      // definition: title, then the section, then its groove and how it is built up
      expect(headings).toEqual(['H1', 'H2', 'H3', 'H3']);
      expect(all.some(({ role }) => role === 'P')).toBe(true);
      const told = all.flatMap(({ role, alt }) => (role === 'Figure' ? [alt ?? ''] : []));
      expect(told.filter((alt) => alt === '')).toEqual([]);
      expect(told.some((alt) => alt.startsWith(first))).toBe(true);
      // definition: the groove and three exercises
      expect(told).toHaveLength(4);
    }
  });

  it('[EN38] the same sheet gives the same bytes', async () => {
    const [first, second] = [
      await writePdf(sheetOf('A4').pages, fonts),
      await writePdf(sheetOf('A4').pages, fonts),
    ];
    expect(Buffer.compare(first, second)).toBe(0);
  });

  it('[EN7701] whatever was set before it', async () => {
    const [anew, used] = [unusedFonts(), unusedFonts()];
    const titled = (title: string, own: Fonts) =>
      writePdf(layOut(`title: "${title}"\nexercises: [x . . .]\n`, { fonts: own }).pages, own);
    // standard: Unicode: the ligature U+FB01 is one character, f and i under one glyph are two
    await titled('\ufb01ve fast \ufb01lls', used);
    const [first, second] = [await titled('five fast fills', anew), await titled('five fast fills', used)];
    expect(Buffer.compare(first, second)).toBe(0);
  });

  it('[EN39] shows a tile as a browser shows its SVG', async () => {
    const bars = barsOf({
      hihat: 'xox. xxx x xx',
      snare: '..g. X.. f bd',
      bass: 'x. ..x x.x .',
      'hihat-foot': '. o . .',
    });
    const tile = engraver.engraveTile({
      id: 'e1',
      bars,
      staff: 'full',
      staffSpaceMm: 3,
      widthMm: 180,
      signature: true,
      barLines: 'repeat',
    });
    const { widthMm, heightMm } = tile;
    const margins = { x: 0, y: 0, width: widthMm, height: heightMm };
    const items = [{ kind: 'tile', x: 0, y: 0, tile } as const];
    const pdf = await writePdf([{ widthMm, heightMm, margins, items }], fonts);
    const [width, height] = [Math.round(widthMm * DOTS_PER_MM), Math.round(heightMm * DOTS_PER_MM)];
    const ours = coarser(await pdfPixels(pdf, width * FINER, height * FINER), width, height);
    const theirs = await browserPixels(tile.svg, width, height);
    // library: pdf.js 5.4 and Chromium
    const inked = theirs.filter((value) => value < 128).length;
    expect(inked).toBeGreaterThan(10_000);
    expect(unlike(ours, theirs, width)).toBeLessThan(inked / 1000);
    expect(unlike(theirs, ours, width)).toBeLessThan(inked / 1000);
  });
});

/**
 * Dots whose like is nowhere in the other picture within one dot's distance (a sixth of a millimetre): the two
 * round the edges of thin lines differently, and nothing else.
 */
function unlike(picture: readonly number[], other: readonly number[], width: number): number {
  const near = [-1, 0, 1].flatMap((dy) => [-1, 0, 1].map((dx) => dy * width + dx));
  return picture.filter((value, at) => {
    const around = near.map((step) => other[at + step] ?? 255);
    return value < Math.min(...around) - 64 || value > Math.max(...around) + 64;
  }).length;
}

const DOTS_PER_MM = 6;

/** Each dot is the mean of this many squared, so that rounding to dots matters little. */
const FINER = 4;

/** A page as pdf.js draws it, in grey. */
async function pdfPixels(pdf: Uint8Array, width: number, height: number): Promise<Uint8Array> {
  const [picture] = await drawPdf(pdf, () => width);
  expect(Math.abs((picture?.height ?? 0) - height)).toBeLessThanOrEqual(FINER);
  return Uint8Array.from({ length: width * height }, (_, i) => picture?.data[4 * i] ?? 255);
}

/** Means of squares of dots. */
function coarser(pixels: Uint8Array, width: number, height: number): readonly number[] {
  const sums = new Array<number>(width * height).fill(0);
  for (let y = 0; y < height * FINER; y += 1) {
    for (let x = 0; x < width * FINER; x += 1) {
      const at = Math.floor(y / FINER) * width + Math.floor(x / FINER);
      sums[at] = (sums[at] ?? 0) + (pixels[y * width * FINER + x] ?? 0);
    }
  }
  return sums.map((sum) => sum / FINER ** 2);
}

/** An SVG as chromium draws it, in grey. */
async function browserPixels(svg: string, width: number, height: number): Promise<readonly number[]> {
  const browser = await chromium.launch({ executablePath: await chromiumPath(), args: ['--no-sandbox'] });
  try {
    const page = await browser.newPage();
    const base64 = Buffer.from(svg).toString('base64');
    const fine = await page.evaluate(
      async ([data, w, h]) => {
        const image = new Image(w, h);
        image.src = `data:image/svg+xml;base64,${data}`;
        await image.decode();
        const context = new OffscreenCanvas(w, h).getContext('2d');
        if (!context) throw new Error('no canvas');
        context.fillStyle = '#fff';
        context.fillRect(0, 0, w, h);
        context.drawImage(image, 0, 0, w, h);
        const { data: pixels } = context.getImageData(0, 0, w, h);
        let text = '';
        for (let i = 0; i < w * h; i += 1) text += String.fromCharCode(pixels[4 * i] ?? 0);
        return btoa(text);
      },
      [base64, width * FINER, height * FINER] as const,
    );
    return coarser(new Uint8Array(Buffer.from(fine, 'base64')), width, height);
  } finally {
    await browser.close();
  }
}
