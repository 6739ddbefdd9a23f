import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readPdf } from '../../../../internal/testing/pdf.ts';
import { fonts } from '../../test/setup.ts';
import { POINTS_PER_MM, writePdf } from '../pdf/write-pdf.ts';
import { setLine, style } from '../sheet/setting.ts';
import { createFonts } from './fonts.ts';
import { wrapText } from './wrap.ts';

describe('widths', () => {
  it('[EN18] a PDF reader measures the same', async () => {
    const words = ['Comping', 'AVATAR', '1', 'trip', 'Größe', 'Þingvellir', 'ffi', 'Ηλέκτρα', 'Иван'];
    const items = words.map((word, index) =>
      setLine(fonts, word, style(index % 2 ? 'bold' : 'regular', 10), { x: 20, y: 20 + 15 * index }),
    );
    const margins = { x: 0, y: 0, width: 210, height: 297 };
    const pdf = await writePdf([{ widthMm: 210, heightMm: 297, margins, items }], fonts);
    // library: pdf.js 5.4: the advance widths of each word, in points
    const read = (await readPdf(pdf)).pages.flatMap(({ texts }) => texts);
    expect(read.map(({ text }) => text)).toEqual(words);
    read.forEach(({ widthPt }, index) => {
      const widthMm = widthPt / POINTS_PER_MM;
      // a hundredth of the em for rounding in the PDF's widths
      expect(Math.abs(widthMm - (items[index]?.widthMm ?? 0))).toBeLessThan(0.1);
    });
  });
});

describe('wrapping', () => {
  const size = style('regular', 4);
  const width = (text: string) => fonts.widthMm(text, 'regular', 4);

  it('[EN19] lines fit and hold every word', () => {
    fc.assert(
      fc.property(
        fc.array(fc.string({ unit: 'grapheme', maxLength: 30 }), { maxLength: 12 }),
        fc.integer({ min: 20, max: 120 }),
        (words, widthMm) => {
          const text = words.join(' ');
          const lines = wrapText(fonts, text, size, widthMm);
          for (const line of lines) expect(width(line)).toBeLessThanOrEqual(widthMm);
          const bare = (of: string) => of.replaceAll(/[\s\u0000-\u001f\u007f-\u009f\u2028\u2029\ufeff]/g, '');
          expect(bare(lines.join(''))).toBe(bare(text));
        },
      ),
      { numRuns: 60 },
    );
  });

  it('[EN19] what does not fit the lines allowed ends in an ellipsis', () => {
    const lines = wrapText(fonts, 'one two three four five six seven eight', size, 20, 2);
    expect(lines.length).toBe(2);
    expect(lines[1]?.endsWith('…')).toBe(true);
    for (const line of lines) expect(width(line)).toBeLessThanOrEqual(20);
    expect(wrapText(fonts, 'one two', size, 60, 2)).toEqual(['one two']);
    expect(wrapText(fonts, 'first\nsecond', size, 60)).toEqual(['first', 'second']);
  });
});

describe('missing characters', () => {
  it('[EN20] are reported, and those of a fallback font are not', () => {
    // definition: Fira Sans has Latin, Greek and Cyrillic letters, and no kana
    expect(fonts.missing('Größe Ηλέκτρα Иван')).toEqual([]);
    expect(fonts.missing('aカb')).toEqual(['カ']);
    const [regular] = fonts.faces;
    if (!regular) throw new Error('no face');
    const bytes = regular.bytes;
    const two = createFonts({ regular: bytes, bold: bytes, italic: bytes, fallbacks: [bytes] });
    expect(two.runs('plain', 'bold', 4).map((run) => run.face)).toEqual(['bold']);
  });
});
