/// <reference path="../vendor.d.ts" />
/**
 * Shaped texts of a font, kept: every PDF sets the same words and counts again.
 *
 * Conventions: font units. What a text is shaped to depends on the text alone, whatever was shaped before it.
 */
import type { FontkitFont, ShapedText } from 'fontkit';

/** Texts that are kept, at most: the words of many sheets. */
const KEPT = 4000;

/** Shapes texts, each once. */
function shaper(font: FontkitFont): (text: string) => ShapedText {
  const kept = new Map<string, ShapedText>();
  return (text) => {
    const known = kept.get(text);
    if (known) return known;
    // A glyph remembers the characters that it was first made for, so each text has glyphs of its own.
    font._glyphs = {};
    const shaped = font.layout(text);
    if (kept.size >= KEPT) kept.clear();
    kept.set(text, shaped);
    return shaped;
  };
}

/** The same text for somebody who changes where its glyphs stand, as pdfkit does; its width follows. */
function forTaking({ glyphs, positions }: ShapedText): ShapedText {
  const own = positions.map((position) => ({ ...position }));
  return {
    glyphs,
    positions: own,
    get advanceWidth() {
      return own.reduce((sum, { xAdvance }) => sum + xAdvance, 0);
    },
  };
}

/** The font, sharing all that it has read, for documents that set the same texts. */
export function withKeptShaping(font: FontkitFont): FontkitFont {
  const shape = shaper(font);
  return Object.create(font, {
    layout: { value: (text: string) => forTaking(shape(text)) },
  }) as FontkitFont;
}
