/// <reference path="../vendor.d.ts" />
/**
 * Text fonts: how wide a text is, and which font has its characters.
 *
 * Conventions: sizes and widths in millimetres; a size is the em. Widths include kerning, as they are drawn.
 */
import { create, type FontkitFont } from 'fontkit';
import { withKeptShaping } from './kept-shaping.ts';

/** A cut of the text font. */
export type Weight = 'regular' | 'bold' | 'italic';

/** TrueType or OpenType font files. */
export interface FontFiles {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
  readonly italic: Uint8Array;
  /** Fonts for characters that the first three lack, in order of preference. */
  readonly fallbacks?: readonly Uint8Array[];
}

/** Where the fonts this package was designed with lie, as module specifiers (SIL Open Font License). */
export const FONT_MODULES = {
  regular: '@expo-google-fonts/fira-sans/400Regular/FiraSans_400Regular.ttf',
  bold: '@expo-google-fonts/fira-sans/600SemiBold/FiraSans_600SemiBold.ttf',
  italic: '@expo-google-fonts/fira-sans/400Regular_Italic/FiraSans_400Regular_Italic.ttf',
} as const;

/** One font, by a name that pages refer to. */
export interface Face {
  readonly name: string;
  readonly family: string;
  readonly bytes: Uint8Array;
  /** The font for documents, which shapes no text twice. */
  readonly forDocuments: FontkitFont;
}

/** A piece of text that one font draws. */
export interface TextRun {
  readonly face: string;
  readonly text: string;
  readonly widthMm: number;
}

/** A glyph of a set text: its outline in font units (y up) and where it stands from the start of the text. */
export interface SetGlyph {
  readonly path: string;
  /** Font units from the start of the text; `unitsPerEm` of them are one em. */
  readonly x: number;
  /** Font units above the baseline, as parts of the em. */
  readonly y: number;
}

/** A text as outlines. */
export interface OutlinedText {
  readonly unitsPerEm: number;
  readonly glyphs: readonly SetGlyph[];
}

/** Fonts that texts are measured and drawn with. */
export interface Fonts {
  readonly faces: readonly Face[];
  /** Splits a text where its font changes; widths at a size. */
  readonly runs: (text: string, weight: Weight, sizeMm: number) => readonly TextRun[];
  readonly widthMm: (text: string, weight: Weight, sizeMm: number) => number;
  /** The outlines of a run, for places that have not the font. */
  readonly outline: (run: Pick<TextRun, 'face' | 'text'>) => OutlinedText;
  /** Characters of a text that no font has. */
  readonly missing: (text: string) => readonly string[];
}

/** Height above the baseline that any text is given, in ems: accents on capitals included. */
export const ASCENT = 0.94;

/** Depth below the baseline that any text is given, in ems. */
export const DESCENT = 0.27;

/** Height of capitals and figures, in ems. */
export const CAP_HEIGHT = 0.69;

interface LoadedFace extends Face {
  readonly font: FontkitFont;
}

interface MeasuredPiece {
  readonly face: string;
  readonly text: string;
  readonly ems: number;
}

/** Marks that need no glyph of their own: variation selectors and joiners. */
const INVISIBLE = /\u200b|\u200c|\u200d|\u200e|\u200f|\u2060|[\ufe00-\ufe0f]/u;

const segmenter = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** Texts of which each character is one that people see: no accents, no modifiers, no line ends (UAX #29, rule GB999). */
const PLAIN = /^[ -~]*$/;

/** Characters as people see them: letters with their accents, emoji with their modifiers. */
export function graphemes(text: string): readonly string[] {
  if (PLAIN.test(text)) return [...text];
  return Array.from(segmenter.segment(text), ({ segment }) => segment);
}

function has(face: LoadedFace, grapheme: string): boolean {
  return [...grapheme].every(
    (character) =>
      INVISIBLE.test(character) || face.font.hasGlyphForCodePoint(character.codePointAt(0) as number),
  );
}

function load(name: string, bytes: Uint8Array): LoadedFace {
  const font = create(bytes);
  return { name, family: font.familyName, bytes, font, forDocuments: withKeptShaping(font) };
}

/** A text in pieces with their widths in ems, remembered by its weight. */
function measurer(orderOf: (weight: Weight) => readonly LoadedFace[]) {
  const known = new Map<string, readonly MeasuredPiece[]>();
  return (text: string, weight: Weight): readonly MeasuredPiece[] => {
    const key = `${weight} ${text}`;
    const before = known.get(key);
    if (before) return before;
    const pieces = splitByFace(text, orderOf(weight)).map(({ face, text: piece }) => {
      const ems = face.font.layout(piece).advanceWidth / face.font.unitsPerEm;
      return { face: face.name, text: piece, ems };
    });
    known.set(key, pieces);
    return pieces;
  };
}

/** Pieces of a text by the first face that has each grapheme; the first face takes what none has. */
function splitByFace(text: string, order: readonly LoadedFace[]): { face: LoadedFace; text: string }[] {
  const first = order[0] as LoadedFace;
  if (has(first, text)) return text === '' ? [] : [{ face: first, text }];
  const pieces: { face: LoadedFace; text: string }[] = [];
  for (const grapheme of graphemes(text)) {
    const face = order.find((each) => has(each, grapheme)) ?? first;
    const last = pieces.at(-1);
    if (last?.face === face) last.text += grapheme;
    else pieces.push({ face, text: grapheme });
  }
  return pieces;
}

function outlineOf(face: LoadedFace, text: string): OutlinedText {
  const { glyphs, positions } = face.font.layout(text);
  let pen = 0;
  const set = glyphs.map((glyph, index): SetGlyph => {
    const position = positions[index];
    const at = { x: pen + (position?.xOffset ?? 0), y: position?.yOffset ?? 0 };
    pen += position?.xAdvance ?? glyph.advanceWidth;
    return { path: glyph.path.toSVG(), ...at };
  });
  return { unitsPerEm: face.font.unitsPerEm, glyphs: set.filter((glyph) => glyph.path !== '') };
}

/**
 * Reads font files.
 * @throws Error (from fontkit) when a file is not a font.
 */
export function createFonts(files: FontFiles): Fonts {
  const weights = {
    regular: load('regular', files.regular),
    bold: load('bold', files.bold),
    italic: load('italic', files.italic),
  };
  const fallbacks = (files.fallbacks ?? []).map((bytes, index) => load(`fallback-${index + 1}`, bytes));
  const measure = measurer((weight) => [weights[weight], ...fallbacks]);
  const runs = (text: string, weight: Weight, sizeMm: number): readonly TextRun[] =>
    measure(text, weight).map(({ face, text: piece, ems }) => ({ face, text: piece, widthMm: ems * sizeMm }));
  const all = [weights.regular, ...fallbacks];
  const faces = [weights.regular, weights.bold, weights.italic, ...fallbacks];
  return {
    faces,
    runs,
    widthMm: (text, weight, sizeMm) => measure(text, weight).reduce((sum, { ems }) => sum + ems * sizeMm, 0),
    outline: ({ face, text }) => outlineOf(faces.find((each) => each.name === face) ?? weights.regular, text),
    missing: (text) =>
      graphemes(text).filter(
        (grapheme) => grapheme.trim() !== '' && !all.some((face) => has(face, grapheme)),
      ),
  };
}

/**
 * The fonts that this package was designed with.
 * @param read gives the bytes of a module's file, e.g. from the disk or over the network
 * @throws whatever `read` throws, and Error (from fontkit) when a file is not a font.
 */
export async function loadFonts(read: (specifier: string) => Promise<Uint8Array>): Promise<Fonts> {
  const [regular, bold, italic] = await Promise.all([
    read(FONT_MODULES.regular),
    read(FONT_MODULES.bold),
    read(FONT_MODULES.italic),
  ]);
  return createFonts({ regular, bold, italic });
}
