/** What tests of engraving start from: an engraver, the fonts, and lessons read from text. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import {
  barPart,
  type Lesson,
  meter,
  type NotatedBar,
  notateBar,
  parseLesson,
  parsePattern,
  type Voice,
} from '@shedbook/core';
import { createFonts, FONT_MODULES, type Fonts } from '../src/text/fonts.ts';
import type { Engraver } from '../src/tile/engraver.ts';
import { loadEngraver } from '../src/tile/load-engraver.ts';

const require = createRequire(import.meta.url);

function bytesOf(specifier: string): Uint8Array {
  return new Uint8Array(readFileSync(require.resolve(specifier)));
}

/** The fonts that the package names, in which nothing was set yet. */
export function unusedFonts(): Fonts {
  return createFonts({
    regular: bytesOf(FONT_MODULES.regular),
    bold: bytesOf(FONT_MODULES.bold),
    italic: bytesOf(FONT_MODULES.italic),
  });
}

/** The same, for all tests that do not ask what was set before. */
export const fonts: Fonts = unusedFonts();

/** One engraver for a whole test file. */
export const engraver: Engraver = await loadEngraver();

/** A lesson without errors. */
export function lessonOf(text: string): Lesson {
  const { lesson, problems } = parseLesson(text, 'test.lesson.yaml');
  if (!lesson) throw new Error(JSON.stringify(problems));
  return lesson;
}

/** Bars of patterns, one for each voice. */
export function barsOf(
  parts: Readonly<Partial<Record<Voice, string>>>,
  meterText = '4/4',
): readonly NotatedBar[] {
  const patterns = Object.entries(parts).map(([voice, text]) => ({
    voice: voice as Voice,
    pattern: parsePattern(text),
  }));
  const count = Math.max(...patterns.map(({ pattern }) => pattern.bars.length));
  return Array.from({ length: count }, (_, bar) =>
    notateBar(
      patterns.map(({ voice, pattern }) => barPart(voice, pattern, bar % pattern.bars.length)),
      meter(meterText),
    ),
  );
}
